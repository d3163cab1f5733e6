// How a bilateral spur cordon is pruned through the years: two canes laid for good in the third winter, then two-bud
// spurs a hand apart along them, each winter from the lower cane of each place. Inner to sim/growth. Frozen: every
// number of it belongs to the generator version of the vine code.
#pragma once

#include <optional>

#include "sim/growth/history_pruner.h"

namespace spurwright::growth {

// Laid in an earlier winter and still there: a permanent arm, or what lengthened one.
bool is_cordon_arm(const Vine& vine, const Axis& axis);

// Where a cane stands on a cordon.
struct SpurPlace {
    NodeId on;      // the arm's node that bears it, by way of older spurs
    Length climbed; // from that node to the node that bears the cane, along the wood
};

// Nothing where the cane stands on no arm: on trunk or head.
std::optional<SpurPlace> spur_place(const Vine& vine, const Axis& cane);

// `far_canes` takes the upper cane of each place, so that spurs climb; `no_spurs` leaves one bud a place; the other
// characters do as with canes. Needs a vine that no edit of this winter has touched.
Plan cordon_plan(const Vine& vine, const PrunerHabits& habits);

} // namespace spurwright::growth
