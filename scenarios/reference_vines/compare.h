// A block's winters side by side: how its vines lie each winter, what changed from one to the next and with what doubt,
// how many vines a wanted precision takes, and how buds kept went with next year's weight. Numbers only; what they say is
// told elsewhere.
#pragma once

#include <array>

#include "scenarios/reference_vines/book.h"
#include "sim/balance/own_history.h"
#include "sim/balance/paired.h"
#include "sim/balance/spread.h"
#include "sim/balance/vine_size.h"

namespace spurwright::reference_vines {

struct CompareWish {
    double confidence = 0.95;
    double within = 0.10;                             // of the mean: the precision asked of a mean
    balance::SizeSet sizes = balance::SizeSet::cool;
    std::optional<std::string> row;                   // which row the book holds of its block; none: all
    std::optional<int> first, last;                   // winters
};

struct WinterSummary {
    int winter = 0;
    balance::VineSpread kg, kg_per_m;
    std::array<int, 4> classes{};     // vines by balance::SizeClass
    balance::VineSpread buds_a_kg;    // buds kept for a kilogram weighed in the same winter
    balance::VineSpread crop_ratio;   // crop over prunings
    double half_width = 0;            // of the mean, kg, at the confidence asked; 0 of fewer than two vines
    int vines_for_wish = 0;           // for `within`; 0 of fewer than two vines
    double vines_if_known = 0;        // the same were the deviation known and not these vines' own; before rounding
};

struct WinterChange {
    int from = 0, to = 0; // winters that follow one another in the book
    balance::PairedChange kg;
    double share = 0;     // of the mean before
    int vines_to_see = 0; // a change of `within` of the mean before; 0 where not tested
};

// One row of the block: its last winter, and what its vines changed by since its first.
struct RowSummary {
    std::string row;
    int first = 0, last = 0; // winters
    balance::VineSpread kg, buds;
    balance::PairedChange since;
    std::vector<double> changes; // kg, of each vine weighed both times
};

// Whether the vines of one row changed by another measure than those of another, since the first winter: the rows stand in
// different soil and vigour, so their weights alone tell nothing of how they were pruned.
struct RowDifference {
    std::string first, second;
    balance::GroupDifference kg; // the second's change less the first's
};
inline constexpr std::size_t most_rows_paired = 4; // more rows make more pairs than a page holds; our choice

struct BlockComparison {
    Block block;
    int vines = 0;
    std::vector<WinterSummary> winters;
    std::vector<WinterChange> changes;
    std::vector<RowSummary> rows;                // in walking order; of more rows than one
    std::vector<RowDifference> row_differences;  // pair by pair; of most_rows_paired rows at most
    balance::LineFit next_by_buds;               // next winter's kg by buds kept
    std::vector<double> buds, next_kg;           // its points
    std::optional<balance::OwnHistory> history;
};
BlockComparison compare(BlockBook book, const CompareWish& wish);

// Leaves a vine the winters that are wished for.
void keep_winters(ReferenceVine& vine, const CompareWish& wish);

// Buds kept, weight and next winter's weight, of every vine and winter where all three are known.
std::vector<balance::KeptYear> kept_years(const std::vector<ReferenceVine>& vines);

} // namespace spurwright::reference_vines
