// What if the end cut had been made elsewhere: the same plan with that one cut moved, its tie made again where the cane
// then ends. For whoever looks back and wants to know what a bud more or less was worth.
#pragma once

#include "sim/rules/judge.h"
#include "sim/pruning/plan.h"

namespace spurwright::planning {

// The plan with the axis of `last` ended after that node as careful hands end it. Earlier end cuts on the axis are left
// out; its outermost tie is made again at the usual place.
// Faults: unknown_part; not_allowed where the plan takes that node off with other wood.
[[nodiscard]] Result<Plan> with_cut_moved(const Vine& before, const rules::HouseRules& house, const Plan& plan, NodeId last);

struct WhatIf {
    NodeId last;     // the cane or spur ends after this node
    Tenths points;
    Tenths gained;   // against the plan as it was
    bool operator==(const WhatIf&) const = default;
};
// For each cane laid and each spur kept: its best other end, where moving its cut alone changes the points for the better.
// In the order left cane, right cane, left spur, right spur.
std::vector<WhatIf> better_ends(const Vine& before, const rules::HouseRules& house, const Plan& plan);

}  // namespace spurwright::planning
