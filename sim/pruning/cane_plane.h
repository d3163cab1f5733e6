// A cane of a vine as bending sees it, and back. It is laid in the one plane of its leaving (its first 300 mm) and the row:
// x along the row towards the laid side, y the way off the row, whatever that is along the cane. So its turn out of the
// row counts as bend as well as its turn upward.
#pragma once

#include <vector>

#include "sim/bending/laying.h"
#include "sim/vine/vine.h"

namespace spurwright {

struct CanePlane {
    bending::Grown cane;
    bending::WireAbove wire;
    double up = 1, across = 0;  // of the plane's y
    Side side{};
};

// Needs an axis of two nodes or more.
CanePlane cane_plane(const Vine& vine, const Axis& axis, Side side);

// Places of its nodes, from a shape in the plane (mm, by node): up by the plane; across from the base to the wire over the
// first `down_mm` of wood, by the share `brought`; along the row by what is left of each joint.
std::vector<Place> onto_vine(const Vine& vine, const Axis& axis, const CanePlane& flat, const std::vector<bending::Flat>& shape,
                             double down_mm, double brought);

}  // namespace spurwright
