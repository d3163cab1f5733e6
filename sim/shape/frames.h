// Frames that turn as little as possible about a curve, by double reflection [wang-2008]: order 4 in the step, where
// projecting or turning from tangent to tangent is order 2. Rings of a tube stand in them without twisting.
#pragma once

#include <vector>

#include "sim/shape/vec3.h"

namespace spurwright::shape {

struct Frame {
    Vec3 along, out;                                // unit, square to each other
    Vec3 side() const { return cross(along, out); } // completes a right-handed frame: out, side, along
};

// The frame at `to`, where the curve runs along the unit vector `along_to`. Needs from != to.
Frame carried(const Frame& at_from, Vec3 from, Vec3 to, Vec3 along_to);

// Frames at every point. Needs as many unit tangents as points, neighbours apart; `first_out` need not be square.
std::vector<Frame> frames_along(const std::vector<Vec3>& points, const std::vector<Vec3>& tangents, Vec3 first_out);

} // namespace spurwright::shape
