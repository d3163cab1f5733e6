// One record a rule: what it asks, what the works say, whose choice the threshold is, when in the work it is judged.
// Thresholds are house rules (house_rules.h); marks are functions of each rule's own file. Nothing registers itself:
// rule_list.h writes the list by hand.
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "sim/core/source.h"
#include "sim/core/text_key.h"
#include "sim/vine/words_of.h"

namespace spurwright {
constexpr auto words_of(Status) {
    return std::to_array<std::string_view>({"read", "choice", "house", "common practice"});
}
}  // namespace spurwright

namespace spurwright::rules {

// In the order on screen and in records.
enum class RuleName : unsigned char {
    cane_diameter,
    cane_end_diameter,
    internode_length,
    internode_evenness,
    origin_distance,
    origin_height,
    cane_side,
    wood_age,
    cane_health,
    bud_load,
    cane_reach,
    cane_count,
    spur_count,
    spur_buds,
    spur_place,
    spur_size,
    spur_direction,
    end_cut,
    old_wood_stub,
    wound_size,
    tool_choice,
    wood_left_behind,
    suckers,
    tying,
    kicker_kept,
    kicker_absent,
    bud_kill_adjust,
    prunings_weighed,
};
inline constexpr std::size_t rule_count = 28;

inline constexpr std::array<std::string_view, rule_count> rule_keys{
    "cane-diameter",
    "cane-end-diameter",
    "internode-length",
    "internode-evenness",
    "origin-distance",
    "origin-height",
    "cane-side",
    "wood-age",
    "cane-health",
    "bud-load",
    "cane-reach",
    "cane-count",
    "spur-count",
    "spur-buds",
    "spur-place",
    "spur-size",
    "spur-direction",
    "end-cut",
    "old-wood-stub",
    "wound-size",
    "tool-choice",
    "wood-left-behind",
    "suckers",
    "tying",
    "kicker-kept",
    "kicker-absent",
    "bud-kill-adjust",
    "prunings-weighed",
};
constexpr std::size_t index_of(RuleName name) { return static_cast<std::size_t>(name); }
constexpr std::string_view key_of(RuleName name) { return rule_keys[index_of(name)]; }

enum class Group : unsigned char { cane_choice, bud_load, spurs, cuts, tidiness };
constexpr auto words_of(Group) {
    return std::to_array<std::string_view>({"cane-choice", "bud-load", "spurs", "cuts", "tidiness"});
}

// The order of work: the one list of steps.
enum class Step : unsigned char { look, choose, clear, spurs, lengths, lay_and_tie, look_back };
constexpr auto words_of(Step) {
    return std::to_array<std::string_view>({"look", "choose", "clear", "spurs", "lengths", "lay-and-tie", "look-back"});
}

// What can still be done about a loss.
enum class Mend : unsigned char { nothing, now, next_winter, carried };
constexpr auto words_of(Mend) { return std::to_array<std::string_view>({"nothing", "now", "next-winter", "carried"}); }

enum class Per : unsigned char { cane, spur, cane_and_spur, vine };
constexpr auto words_of(Per) { return std::to_array<std::string_view>({"cane", "spur", "cane-and-spur", "vine"}); }

struct Rule {
    RuleName name;
    TextKey asks;  // one sentence: what to do, for people who learn
    Group group;
    Step step;
    Per per;
    Status status;                  // of the shipped threshold
    std::span<const Claim> claims;  // what works say; none: our choice alone
    TextKey missing;                // of a rule about pieces: the piece asked for is not there; gap {side}
    constexpr std::string_view key() const { return key_of(name); }
};

}  // namespace spurwright::rules
