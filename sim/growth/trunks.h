// One trunk or two: which serves a side, where the second one leaves the first. A second trunk is an axis without a
// parent whose crown stands on the first one's wood (formats of the tables: a trunk is on nothing).
#pragma once

#include "sim/vine/vine.h"

namespace spurwright::growth {

inline constexpr AxisId first_trunk{1}, second_trunk{2};

// Whether shoots of this trunk's old wood may be the side's: of a single trunk both sides', of two its own side's.
bool serves(const Vine& vine, const Axis& trunk, Side side);

// The node of the first trunk that the second one leaves: the nearest to its crown; none where there is one trunk.
NodeId fork_of(const Vine& vine);

} // namespace spurwright::growth
