// The same counts as plan_count.h for vines with very many canes (neglected for years): what each side can be worth is
// counted once, for all its canes and spurs together, and the two sides meet by totals. Choices that use an axis twice
// are counted too at first, and taken off again. Work grows with C * C instead of with the fourth power.
#pragma once

#include <optional>

#include "sim/planning/brute_force.h"

namespace spurwright::planning {

// Nothing where the pair term knows too many kinds of canes for this way to pay; a vine's tables have three.
std::optional<Tally> tally_by_halves(const Tables& tables, int points);

}  // namespace spurwright::planning
