// Which cuts the pieces kept ask for in last year's wood, and where: what completes a choice makes them, and the judge
// asks whether they were made. Knows pieces only, no marks.
#pragma once

#include <span>
#include <vector>

#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"

namespace spurwright::rules {

struct DueCut {
    AxisId axis;
    NodeId past;  // as a Cut names its place: below 0 in the collar of node 0
    Length beyond;
    bool operator==(const DueCut&) const = default;
};

// Each two-year axis (dead ones too; older wood is left) is cut past its outermost node that bears a kept piece, and
// not at all where nothing stands beyond; one that bears none is cut with a stub from its parent's surface. The stub is
// 1.5 x the larger diameter of the joint cut (of the crown's collar, for an axis taken off whole), at most to 5 mm
// short of the next node, rounded down to 0.1 mm. Axes that an earlier due cut takes off need none. Ascending by axis.
std::vector<DueCut> due_old_wood_cuts(const Vine& before, const HouseRules& house, std::span<const AxisId> kept);

// Along the wood from the surface of the axis's parent to a place on the axis.
Length from_surface(const Vine& vine, const Axis& axis, std::uint32_t index, Length beyond);

}  // namespace spurwright::rules
