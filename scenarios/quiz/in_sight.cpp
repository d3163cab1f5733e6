#include "scenarios/quiz/in_sight.h"

#include <algorithm>

#include "sim/vine/vine_query.h"

namespace spurwright::quiz {
namespace {

// Where the eyes of somebody are who bends to a place (our choice): before the row, a little above it, no lower than
// a bent back and no higher than standing.
constexpr double before_row_m = 0.35, above_m = 0.35, lowest_m = 1.25, highest_m = 1.60;
constexpr double clear_m = 0.008;  // of other wood, so that no edge of it is taken for the place

struct At {
    double x, y, z;
};
At of(const Place& p) { return {in_m(p.x), in_m(p.y), in_m(p.z)}; }
At operator-(At a, At b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
At along(At from, At way, double share) { return {from.x + way.x * share, from.y + way.y * share, from.z + way.z * share}; }
double dot(At a, At b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

// Square of the least distance between two stretches, each from a place along a way.
double least_square(At a, At way_a, At b, At way_b) {
    const At apart = a - b;
    const double aa = std::max(dot(way_a, way_a), 1e-12), bb = std::max(dot(way_b, way_b), 1e-12), ab = dot(way_a, way_b);
    const double ca = dot(way_a, apart), cb = dot(way_b, apart), across = aa * bb - ab * ab;
    double s = across > 1e-12 ? std::clamp((ab * cb - ca * bb) / across, 0.0, 1.0) : 0.0;
    const double t = std::clamp((ab * s + cb) / bb, 0.0, 1.0);
    s = std::clamp((ab * t - ca) / aa, 0.0, 1.0);
    const At between = along(a, way_a, s) - along(b, way_b, t);
    return dot(between, between);
}

}  // namespace

bool in_sight(const Vine& vine, NodeId joint) {
    const AxisId own = axis_of(joint);
    const At outer = of(vine.find(joint)->place), inner = of(vine.find(node_id(own, index_of(joint) - 1))->place);
    const At middle = along(inner, outer - inner, 0.5);
    const At eye{middle.x, std::clamp(middle.y + above_m, lowest_m, highest_m), before_row_m};
    for (const Axis& axis : vine.axes) {
        if (axis.removed || axis.id == own) continue;
        const auto nodes = vine.nodes_of(axis);
        for (std::size_t i = 1; i < nodes.size() && !nodes[i].removed; ++i) {
            const At from = of(nodes[i - 1].place);
            const double clear = in_m(nodes[i].major) / 2 + clear_m;
            if (least_square(eye, middle - eye, from, of(nodes[i].place) - from) < clear * clear) return false;
        }
    }
    return true;
}

}  // namespace spurwright::quiz
