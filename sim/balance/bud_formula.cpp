#include "sim/balance/bud_formula.h"

#include <algorithm>

namespace spurwright::balance {

double buds_for(const BudFormula& formula, double prunings_kg) {
    return formula.first + formula.further * std::max(0.0, prunings_kg / kg_per_lb - 1.0);
}

} // namespace spurwright::balance
