#include "sim/balance/bud_formula.h"

#include <algorithm>

namespace spurwright::balance {

FormulaBuds buds_for(const BudFormula& formula, double prunings_kg) {
    constexpr double least = 8;
    const double over = prunings_kg - formula.first_kg;
    if (over >= -1e-9) return {formula.first + formula.further * over / formula.further_kg, false};
    return {std::max(formula.first * prunings_kg / formula.first_kg, least), true};
}

std::string_view source_of(const BudFormula& formula) {
    if (formula.first_kg != kg_per_lb || formula.further_kg != kg_per_lb) return {};
    struct Published {
        double first, further;
        std::string_view source;
    };
    constexpr Published published[] = {{30, 10, "smith-2023"}, {20, 10, "smith-2023"}, {20, 20, "smith-2023"},
                                       {14, 10, "cortell-2012"}, {60, 10, "cornell-severity"}};
    for (const Published& one : published)
        if (one.first == formula.first && one.further == formula.further) return one.source;
    return {};
}

} // namespace spurwright::balance
