#include "sim/bending/base_arc.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"

namespace spurwright::bending {
namespace {

constexpr double least_turn = 1e-6;  // radians below which a cane counts as straight

Point plus(const Point& a, const Point& b, double k) { return {a.x + k * b.x, a.y + k * b.y, a.z + k * b.z}; }

double length_of(const Point& p) { return std::sqrt(p.x * p.x + p.y * p.y + p.z * p.z); }

// The path gone (in radii) after `psi` radians of the turn, in the plane of the leaving direction u and the row:
// the integral of (sin(turn - psi) u + sin(psi) x) / sin(turn). Against the row (turn = pi) u and x are opposite and
// the plane is free: the upright one is taken, so a cane bends over the top.
Point path(const BaseArc& arc, numeric::SineCosine psi) {
    if (arc.sine <= 1e-9) return {-psi.sine, 1.0 - psi.cosine, 0};
    const double cosine_of_rest = arc.cosine * psi.cosine + arc.sine * psi.sine;
    const double a = (cosine_of_rest - arc.cosine) / arc.sine, b = (1.0 - psi.cosine) / arc.sine;
    return plus({a * arc.direction.x, a * arc.direction.y, a * arc.direction.z}, {1, 0, 0}, b);
}

}  // namespace

BaseArc base_arc(const Point& start, const Point& direction, double wire_above_start) {
    const double size = length_of(direction);
    BaseArc arc;
    arc.start = start;
    arc.direction = size > 0 ? Point{direction.x / size, direction.y / size, direction.z / size} : Point{1, 0, 0};
    arc.wire = wire_above_start;
    arc.turn = numeric::acos(arc.direction.x);
    arc.end = start;
    if (arc.turn < least_turn) return arc;
    const numeric::SineCosine turn = numeric::sincos(arc.turn);
    arc.sine = turn.sine;
    arc.cosine = turn.cosine;
    const double hand = least_hand_radius * std::min(1.0, numeric::pi / 2 / arc.turn);
    const Point whole = path(arc, turn);  // in radii
    arc.radius = std::max(hand, whole.y > 1e-6 ? (wire_above_start + arch_over_wire) / whole.y : hand);
    arc.end = plus(start, whole, arc.radius);
    return arc;
}

double arc_strain(const BaseArc& arc, double diameter) { return arc.radius > 0 ? diameter / (2.0 * arc.radius) : 0.0; }

Point point_at(const BaseArc& arc, double s) {
    const double bent = arc.radius * arc.turn;
    if (s < bent) return plus(arc.start, path(arc, numeric::sincos(s / arc.radius)), arc.radius);
    const Point onto{arc.end.x + approach, arc.start.y + arc.wire, 0};
    const Point way = plus(onto, arc.end, -1.0);
    const double run = length_of(way), rest = s - bent;
    if (rest <= run) return plus(arc.end, way, rest / run);
    return plus(onto, {1, 0, 0}, rest - run);
}

}  // namespace spurwright::bending
