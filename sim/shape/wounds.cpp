// Faces of cuts that took a whole axis off: on the side of the wood that bore it.
#include <algorithm>

#include "sim/core/numeric.h"
#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

// Where the axis that went once stood. Its row tells as long as it is there; later the wood remembers by a draw, on
// the upper side of a head (memory).
Vec3 way_of_wound(const VineShape& shape, const Vine& vine, const Wound& wound, const Stem& bearer, const StemNode& node) {
    if (const Axis* axis = vine.find(wound.axis); axis && axis->removed && axis->parent == wound.node) {
        const Vec3 first = point_of(vine.nodes_of(*axis)[0].place);
        if (length(first - node.place) > 1e-6) return unit(first - node.place);
    }
    const double turn = share_of(vine.seed, Look::wound_way, wound.id.value) * 2 * numeric::pi;
    const auto a = numeric::sincos(turn);
    Vec3 out = a.cosine * node.plane + a.sine * cross(node.along, node.plane);
    const bool at_head = length(node.place - shape.head) < 0.12;
    if (at_head) out = out + Vec3{0, 0.5 + share_of(vine.seed, Look::wound_way, wound.id.value, 1), 0};
    if (bearer.trunk && !at_head) return square_part(out, node.along);
    return unit(out);
}

}  // namespace

void add_wounds(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row) {
    for (const Wound& wound : vine.wounds) {
        const Axis* bearing = vine.find(axis_of(wound.node));
        if (!bearing) continue;
        const int at = stem_of_row[row_of(vine, *bearing)];
        if (at < 0) continue;
        const Stem& stem = shape.stems[static_cast<std::size_t>(at)];
        if (stem.end_wound == wound.id) continue;  // drawn as the stem's own end
        if (wound.axis == axis_of(wound.node)) continue;  // an end that was cut back further since
        if (index_of(wound.node) >= stem.nodes.size()) continue;
        const StemNode& node = stem.nodes[index_of(wound.node)];
        const Vec3 way = way_of_wound(shape, vine, wound, stem, node);
        const Radii radii{in_m(wound.major) / 2, in_m(wound.minor) / 2};
        const double stands_out = std::max(0.0, in_m(wound.beyond)) + 0.0015;
        shape.wounds.push_back({wound.id, wound.axis, wound.node, static_cast<std::uint32_t>(at), node.place + 0.2 * node.radius * way,
                                node.place + (node.radius + stands_out) * way, way, radii, vine.winter - wound.winter, wound.wood_age});
    }
}

}  // namespace spurwright::shape
