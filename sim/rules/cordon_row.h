// A spur cordon as the rules see it: along each arm a row of canes, each at its place, of which so many are asked for as
// spurs. Facts of the uncut vine. Must not know: plans, marks of whole plans.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sim/rules/facts.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// Wood laid for good: on a cordon what was laid in an earlier winter and is older than a year.
bool is_arm(const Vine& vine, const Axis& axis);

// How far along the row from the trunk's foot the arms of a side reach; nothing where the side has none.
std::optional<Length> arm_reach(const Vine& vine, Side side);

// A cane that may be a spur of its place.
struct RowCane {
    AxisId axis;
    NodeId place;         // the arm's node that bears it, by way of older spurs
    Length along;         // from the crown point to that place
    Length climbed;       // from there to the node that bears the cane, along the older wood
    Length above_lowest;  // than the lowest good cane of its place; 0 where it is that
    bool good = false;    // an acceptable spur
    bool operator==(const RowCane&) const = default;
};

// By side, outward, at one place the lowest first. Live canes with a ripe count bud that stand on an arm; no suckers.
using CordonRow = std::array<std::vector<RowCane>, 2>;
CordonRow cordon_row(const Vine& before, const HouseRules& house);

// Spurs asked of a side: half the target in spurs of the longest full length, but no more than good canes can be kept as
// far apart as full marks need.
int spurs_asked(const std::vector<RowCane>& row, const HouseRules& house, Length spacing);

const RowCane* find_in(const std::vector<RowCane>& row, AxisId axis);
// `inner`: the next spur kept towards the head; null where it is the first.
RowPlaceFacts place_in(const std::vector<RowCane>& row, const RowCane& cane, const RowCane* inner, const HouseRules& house);

}  // namespace spurwright::rules
