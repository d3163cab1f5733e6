#include "sim/balance/bud_target.h"

#include <algorithm>
#include <cmath>

namespace spurwright::balance {

SpaceBuds buds_by_space(double spacing_m) { return {12 * spacing_m, 15 * spacing_m, 17 * spacing_m}; }

BudTarget bud_target(double by_weight, double spacing_m) {
    BudTarget target{by_weight, buds_by_space(spacing_m), 0, Meeting::agree};
    target.smaller = std::min(by_weight, target.by_space.high);
    if (by_weight > target.by_space.high) target.meeting = Meeting::above;
    if (by_weight < target.by_space.low) target.meeting = Meeting::below;
    return target;
}

int whole_buds(double buds) { return static_cast<int>(std::floor(buds + 0.5)); }

double charge(double prunings_g, double cane_g, double blind_share) { return prunings_g / cane_g * (1 + blind_share); }

double charge_by_count(int weak, int ideal, int strong, double strong_counts) {
    return 0.5 * weak + ideal + strong_counts * strong;
}

} // namespace spurwright::balance
