// What came off: mass by age of wood from volume and density, joint by joint.
#pragma once

#include "sim/vine/vine.h"

namespace spurwright {

inline constexpr double density_fresh = 0.95;  // g/cm3, of fresh dormant wood (memory, midpoint 0.85-1.05; DEVELOPERS.md)

struct Masses {
    double one_year_mg = 0, older_mg = 0;  // doubles: a vine's sums are rounded once, when shown
};

struct Prunings {
    Masses before, kept, removed;  // before = kept + removed
    int one_year_nodes = 0, one_year_nodes_removed = 0;  // nodes besides crowns
};

// Of the joint below a node (mg); a crown's collar belongs to the axis and is counted.
double joint_mass_mg(const Node& node);

// What stands of an axis, its stub included where it was cut off (mg).
double standing_mass_mg(const Vine& vine, const Axis& axis);

// Of the wood that an axis has beyond its last node, out to its ripe end (mg).
double tip_mass_mg(const Vine& vine, const Axis& axis);

// `before` is the vine before any cut of this winter, `after` the same vine pruned. The piece of a joint that stays
// beyond a cut counts as kept.
Prunings prunings(const Vine& before, const Vine& after);

}  // namespace spurwright
