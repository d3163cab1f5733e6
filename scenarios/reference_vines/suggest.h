// Buds for the coming winter, vine by vine and for the block: by weight, by space, the smaller of the two, and by what the
// block's own years held with. The program suggests; a person decides.
#pragma once

#include "scenarios/reference_vines/compare.h"
#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"

namespace spurwright::reference_vines {

struct SuggestedBuds {
    std::string tag, row;
    std::optional<std::int64_t> place;
    int winter = 0;                // of the weight
    Mass prunings{};
    double kg_per_m = 0;
    balance::SizeClass size{};
    balance::BudTarget buds;       // by weight, by space, the smaller
    bool small_vine = false;
    double by_history = 0, history_low = 0, history_high = 0; // 0 where the block has no history
    std::optional<std::int64_t> kept; // buds kept in that winter
};

struct BlockSuggestion {
    Block block;
    balance::BudFormula formula;
    int winter = 0; // the last weighed
    std::vector<SuggestedBuds> vines;
    std::optional<balance::OwnHistory> history;
    std::optional<SuggestedBuds> middle; // of the block's median weight in that winter
    std::optional<double> kept;          // buds: median of the vines that tell it, in that winter
    double low = 0, high = 0;            // the middle's smaller number, were its weight off by weight_off either way
    int before = 0;                      // the winter before it that was weighed; 0: none
    balance::PairedChange change;        // of the same vines since then, at 95 %
};
// As far off as a weight may be and still have its full mark (prunings-weighed; our choice).
inline constexpr double weight_off = 0.05;

// For the vines weighed in the last winter of the book, in walking order.
BlockSuggestion suggest(const BlockBook& book, const balance::BudFormula& formula, balance::SizeSet sizes);

} // namespace spurwright::reference_vines
