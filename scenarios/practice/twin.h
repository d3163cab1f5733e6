// A line drawn beside the own wood: a cane or a spur of some plan, as it would lie and end.
#pragma once

#include <vector>

#include "sim/pruning/plan.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

// An axis of the vine as it was, out to a node, lying where it would lie.
struct Twin {
    AxisId axis;
    NodeId last;               // node it is cut past
    Side side{};
    bool spur = false;         // else a laid cane
    std::vector<Place> places; // crown first, out to `last`
    bool operator==(const Twin&) const = default;
};

// As the axis stands on a pruned vine.
Twin twin_of(const Vine& after, const Axis& axis, Side side, bool spur);

// The lines of one plan: its canes laid, its spurs.
std::vector<Twin> twins_of(const Vine& before, const Plan& plan);

}  // namespace spurwright::practice
