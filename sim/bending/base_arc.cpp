#include "sim/bending/base_arc.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"

namespace spurwright::bending {
namespace {

constexpr double least_turn = 1e-6;  // radians below which a cane counts as straight

Point plus(const Point& a, const Point& b, double k) { return {a.x + k * b.x, a.y + k * b.y, a.z + k * b.z}; }

double length_of(const Point& p) { return std::sqrt(p.x * p.x + p.y * p.y + p.z * p.z); }

// The way of the arc after `psi` radians of its turn, and the path gone (in radii), both in the plane of the leaving
// direction and the row: direction(psi) = (sin(turn - psi) u + sin(psi) x) / sin(turn).
struct Frame {
    Point leaving;  // u
    double turn;
    Point path(double psi) const {
        // Integral of the direction from 0 to psi. Against the row (turn = pi) u and x are opposite and the plane is
        // free: the upright one is taken, so a cane bends over the top.
        const auto [sin_turn, cos_turn] = numeric::sincos(turn);
        const auto [sin_rest, cos_rest] = numeric::sincos(turn - psi);
        const auto [sin_psi, cos_psi] = numeric::sincos(psi);
        if (sin_turn > 1e-9) {
            const double a = (cos_rest - cos_turn) / sin_turn, b = (1.0 - cos_psi) / sin_turn;
            return plus({a * leaving.x, a * leaving.y, a * leaving.z}, {1, 0, 0}, b);
        }
        return {-sin_psi, 1.0 - cos_psi, 0};
    }
};

}  // namespace

BaseArc base_arc(const Point& start, const Point& direction, double wire_above_start) {
    const double size = length_of(direction);
    BaseArc arc;
    arc.start = start;
    arc.direction = size > 0 ? Point{direction.x / size, direction.y / size, direction.z / size} : Point{1, 0, 0};
    arc.wire = wire_above_start;
    arc.turn = numeric::acos(arc.direction.x);
    if (arc.turn < least_turn) return arc;
    const double hand = least_hand_radius * std::min(1.0, numeric::pi / 2 / arc.turn);
    const double rise = Frame{arc.direction, arc.turn}.path(arc.turn).y;  // in radii
    arc.radius = std::max(hand, rise > 1e-6 ? (wire_above_start + arch_over_wire) / rise : hand);
    return arc;
}

double arc_strain(const BaseArc& arc, double diameter) { return arc.radius > 0 ? diameter / (2.0 * arc.radius) : 0.0; }

Point point_at(const BaseArc& arc, double s) {
    const double bent = arc.radius * arc.turn;
    const Frame frame{arc.direction, arc.turn};
    if (s < bent) return plus(arc.start, frame.path(s / arc.radius), arc.radius);
    const Point end = arc.radius > 0 ? plus(arc.start, frame.path(arc.turn), arc.radius) : arc.start;
    const Point onto{end.x + approach, arc.start.y + arc.wire, 0};
    const Point way = plus(onto, end, -1.0);
    const double run = length_of(way), rest = s - bent;
    if (rest <= run) return plus(end, way, rest / run);
    return plus(onto, {1, 0, 0}, rest - run);
}

}  // namespace spurwright::bending
