// How a shoot stands: from its base through the elbow and the lean up between the wires to the top of the hedge. The
// only writer of places besides laying. Millimetres and plain points inside; tables round once.
#pragma once

#include <array>
#include <vector>

#include "sim/growth/shoot.h"

namespace spurwright::growth {

struct Point3 {
    double x = 0, y = 0, z = 0;
};

Point3 in_mm(const Place& place);
Place place_of(const Point3& point);

// The canopy's frame: what holds and what cuts the shoots.
struct Trellis {
    Trellis(const Vine& vine, const SeasonSettings& settings);
    double fruiting = 0;               // height of the fruiting wire
    std::vector<double> catch_heights; // of pairs that stand in summer
    double half_gap = 0;
    double top = 0; // of the hedge; far above where there is none
    double side = 0;
    bool hedged = false;
};

// Where a shoot's nodes come to stand.
struct Course {
    std::vector<Point3> at;   // crown first, then every node that grew before the hedge
    std::vector<Point3> rank; // at each of them: the way a bud of rank +1 looks, a unit vector across the cane
    double wood_mm = 0;       // length that is left after hedging
    bool hedged = false;
};

// Of a shoot of the season that springs from `push.on` of `vine`. Fills `course`, whose memory is used again.
void stand_shoot(Course& course, const Vine& vine, AxisId id, const Push& push, const Shoot& shoot, double collar_mm,
                 const Trellis& trellis, const SeasonSettings& settings, const Draws& draws);

// The largest part of a bud's direction, for an axis of this side: up, down, outward, inward, across in that order.
Points points_of(const Point3& direction, Side side);

} // namespace spurwright::growth
