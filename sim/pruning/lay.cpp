#include "sim/pruning/lay.h"

#include <algorithm>
#include <cmath>

#include "sim/bending/base_arc.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

// Bending works towards +x: the near-post side is its mirror image.
bending::Point point_of(const Place& p, double sign) { return {sign * in_mm(p.x), in_mm(p.y), in_mm(p.z)}; }

Place place_of(const bending::Point& p, double sign) { return {from_mm(sign * p.x), from_mm(p.y), from_mm(p.z)}; }

bending::BaseArc arc_of(const Vine& vine, const Axis& axis, Side side) {
    const auto nodes = vine.nodes_of(axis);
    const double sign = sign_of(side);
    const bending::Point start = point_of(nodes[0].place, sign);
    const bending::Point along = point_of(nodes[std::min<std::size_t>(2, nodes.size() - 1)].place, sign);
    return bending::base_arc(start, {along.x - start.x, along.y - start.y, along.z - start.z}, in_mm(fruiting_wire_height(vine)) - start.y);
}

struct Bent { Strain strain; NodeId worst; };

// The joint most strained on the arc: the whole cane as it grew, so that its cut end does not matter.
Bent bent(const Vine& vine, const Axis& axis, const bending::BaseArc& arc) {
    const auto nodes = vine.nodes_of(axis);
    Bent most{{}, nodes[0].id};
    double s = 0;
    for (std::uint32_t i = 1; i < nodes.size() && s < arc.radius * arc.turn; ++i) {
        const double strain = bending::arc_strain(arc, in_mm(mean_diameter(nodes[i])));
        const Strain here{rounded(strain * 1e6)};
        if (here > most.strain) most = {here, nodes[i].id};
        s += in_mm(nodes[i].joint);
    }
    return most;
}

LaidState state_of(Strain strain) {
    if (strain > strain_at_break) return LaidState::snapped;
    const auto skin = static_cast<std::int32_t>(std::int64_t{strain_at_break.count} * skin_crack_per_mille / 1000);
    return strain.count >= skin ? LaidState::skin_crack : LaidState::held;
}

}  // namespace

Course course_of(const Vine& vine, const Axis& axis, Side side) {
    const bending::BaseArc arc = arc_of(vine, axis, side);
    const Bent most = bent(vine, axis, arc);
    Course course{{}, most.strain, most.worst, state_of(most.strain)};
    const auto nodes = vine.nodes_of(axis);
    course.places.reserve(nodes.size());
    double s = 0;
    for (std::uint32_t i = 0; i < nodes.size(); ++i) {
        if (i > 0) s += in_mm(nodes[i].joint);
        course.places.push_back(i == 0 ? nodes[0].place : place_of(bending::point_at(arc, s), sign_of(side)));
    }
    return course;
}

bool would_break(const Vine& vine, const Axis& axis, Side side) { return bent(vine, axis, arc_of(vine, axis, side)).strain > strain_at_break; }

}  // namespace spurwright
