// Balanced pruning by formula: so many buds for the first portion of one-year prunings and so many for each further one.
#pragma once

#include <string_view>

namespace spurwright::balance {

inline constexpr double kg_per_lb = 0.45359237; // exact by definition

struct BudFormula {
    double first = 20, further = 20;                         // buds; 20 + 20 for vinifera [smith-2023]
    double first_kg = kg_per_lb, further_kg = kg_per_lb;     // of prunings; a pound each in the American form
};

// N(m) = A + B (m - first) / further, before rounding. Below the first portion no source gives a rule: pro rata, but at
// least 8, two canes of four buds, and flagged (our choice). Needs prunings_kg >= 0.
struct FormulaBuds {
    double buds = 0;
    bool small_vine = false;
};
FormulaBuds buds_for(const BudFormula& formula, double prunings_kg);

// Who published the formula of these two numbers a pound, a source's key; empty: a house's own.
std::string_view source_of(const BudFormula& formula);

} // namespace spurwright::balance
