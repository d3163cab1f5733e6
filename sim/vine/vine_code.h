// The vine code: 24 characters that name a vine grown with shipped constants. Six groups of three characters and a
// check each, 90 bits, a whole check at the end. Append-only numbers; everything the code cannot say gives a vine file.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "sim/core/error.h"
#include "sim/vine/words_of.h"

namespace spurwright {

// Who pruned this vine through the years; the characters of the frozen history pruner.
enum class Pruner : unsigned char { good, thin_wood, far_canes, no_spurs, too_many_buds, flush_cuts, neglect, good_with_spell };
constexpr auto words_of(Pruner) {
    return std::to_array<std::string_view>({"good", "thin-wood", "far-canes", "no-spurs", "too-many-buds", "flush-cuts", "neglect", "good-with-spell"});
}

// What a code holds, in its own steps: exactly the vines a code can name.
struct CodedSite {
    int recipe = 0;
    System system{};
    int age = 12;                        // winters since planting, 3 to 40
    Vigour vigour = Vigour::moderate;
    bool frost = false;
    int spacing_step = 24;               // 0.60 m + 0.05 m each, 0-63
    int rows_step = 14;                  // 1.0 m + 0.1 m each, 0-31
    int wire_step = 3;                   // 0.6 m + 0.1 m each, 0-7
    int variety = 0;                     // place in the list of varieties, 0-31; 0 plain; growth knows which there are
    Pruner pruner{};
    bool two_trunks = false;
    bool missing_left = false, missing_right = false;
    std::uint64_t seed = 0;              // 40 bit
    bool operator==(const CodedSite&) const = default;
};

inline constexpr int newest_recipe = 0;  // raised whenever the same code would grow another vine

// "01WR-J9SG-G20Z-938T-NKRF-KAZW". Needs every field in its range.
std::string print_code(const CodedSite& site);

// Whether a text is meant as a code: 24 characters of the alphabet (hyphens and spaces aside), whatever their checks.
bool looks_like_code(std::string_view text);

// Refusals in this order: length, a group mistyped (named), the whole check, recipe unknown, a field out of range (named).
[[nodiscard]] Result<CodedSite> read_code(std::string_view text);

}  // namespace spurwright
