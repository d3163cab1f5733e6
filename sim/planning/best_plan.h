// The exact best choice of the tables, without listing choices: for each pair of canes the two cut nodes are folded by
// the total of their buds, each side's spurs come down to two sites a length, and the two meet in the totals alone.
// Caps come after the sum, so each class of plans with one cap is searched apart. The same plan as brute_force.h,
// always.
#pragma once

#include <optional>

#include "sim/planning/tables.h"

namespace spurwright::planning {

// Pairs of canes that cannot reach the best points found are left out. Off only to measure what that saves.
enum class Bound : unsigned char { on, off };

// Nothing where the tables have no choice. Work: about C * C * (K * K + 7 * K) steps for C canes with K cut nodes.
std::optional<Ranked> best_pick(const Tables& tables, Bound bound = Bound::on);

}  // namespace spurwright::planning
