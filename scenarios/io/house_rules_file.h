// House rules as a file ("kind": "spurwright-house-rules"): a base and what a block does otherwise. Read and written
// through the list of parameters that sim/rules publishes, so no name stands twice. Refusals name key and line.
// Schema: assets/schemas/house-rules-1.json. Must not know: what a parameter means.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/assets.h"
#include "scenarios/io/json.h"
#include "sim/core/error.h"
#include "sim/rules/house_rules.h"

namespace spurwright::io {

inline constexpr std::string_view house_rules_kind = "spurwright-house-rules";
inline constexpr int house_rules_version = 1;
// The sets in assets/house-rules, by name.
inline constexpr std::array<std::string_view, 7> shipped_house_sets{
    "general", "close-head", "slow-arms", "cool-sites", "low-vigour", "high-vigour", "spur-cordon"};
// Of them, the two ways with the head that crews hold to; the others are for the wood a site grows.
inline constexpr std::array<std::string_view, 2> house_ways{"close-head", "slow-arms"};

struct HouseRulesFile {
    std::string name, title, base, set_by, set_on; // base: a shipped set; empty: the file says all itself
    rules::HouseRules rules;                       // resolved: the base, then the file's own
    std::vector<std::string> own;                  // "cane-diameter.full": what the file sets itself
};

// `assets`: where the shipped sets lie. Faults: bad_file, newer.
[[nodiscard]] Result<HouseRulesFile> read_house_rules(std::string_view text, const std::string& source,
                                                      const Assets& assets);

// NAME of a shipped set, or a path (anything with a slash or a dot).
[[nodiscard]] Result<HouseRulesFile> load_house_rules(const std::string& name_or_path, const Assets& assets);

// A file somebody asks about: its path, whatever it looks like.
[[nodiscard]] Result<HouseRulesFile> load_house_rules_file(const std::string& path, const Assets& assets);

// Every parameter, or with a base only those in `own`.
std::string print_house_rules(const HouseRulesFile& file);
// Every parameter by rule, as files write them: {"cane-diameter": {"weight": 50, ...}, ...}.
Json parameter_values(const rules::HouseRules& house);

} // namespace spurwright::io
