// Balanced pruning by formula: so many buds for the first pound of prunings and so many for each further pound.
#pragma once

namespace spurwright::balance {

inline constexpr double kg_per_lb = 0.45359; // rounded as the source's trade does

struct BudFormula {
    double first = 20, further = 20; // buds a pound; 20 + 20 for vinifera [smith-2023]
};

// N(W) = A + B (W - 1), W in pounds: buds before rounding. Below one pound the formula is not asked [smith-2023]: the first
// pound's buds are given.
double buds_for(const BudFormula& formula, double prunings_kg);

} // namespace spurwright::balance
