// The smooth line through the places of a stem and its radii, between the places too. Measuring never uses it: rules
// and callipers read the tables. Knows nothing of vines.
#pragma once

#include <vector>

#include "sim/shape/vec3.h"

namespace spurwright::shape {

struct Radii {
    double major = 0, minor = 0;
    double mean() const { return (major + minor) / 2; }
};

struct LinePoint {
    Vec3 place;
    Radii radii;
    int node = -1; // index of the node that stands here; -1: none
};

struct LineSample {
    Vec3 place, along; // along: unit
    Radii radii;
};

// Piecewise cubic (Hermite, slopes by finite differences); radii piecewise quadratic, so that the middle of each
// segment has exactly the radii given for it.
class CentreLine {
public:
    // `middles[i]` belongs to the segment from point i to i + 1. Needs two points at least, neighbours apart.
    CentreLine() = default;
    CentreLine(std::vector<LinePoint> points, std::vector<Radii> middles);

    std::size_t segment_count() const { return middles_.size(); }
    const std::vector<LinePoint>& points() const { return points_; }
    double segment_length(std::size_t segment) const {
        return length(points_[segment + 1].place - points_[segment].place);
    }
    // share in [0, 1] along the segment.
    LineSample at(std::size_t segment, double share) const;

private:
    std::vector<LinePoint> points_;
    std::vector<Radii> middles_;
    std::vector<Vec3> slopes_; // a metre along the chord
};

} // namespace spurwright::shape
