// The two crowns of a head, and the faces of cuts that took a whole axis off.
#include <algorithm>
#include <map>

#include "sim/core/numeric.h"
#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

constexpr double golden_turn = 2.39996; // radians: places on a ball that do not crowd

// Callus closes over a face from its rim; our choice of pace.
double open_share(int winters) { return winters <= 1 ? 1.0 : std::max(0.62, 1.0 - 0.05 * (winters - 1)); }

// The way of the nth wound of a crown: over the upper and outer side, where a head keeps its scars (memory).
Vec3 way_on_crown(std::uint32_t nth, double outward, double offset) {
    const double share = nth / (nth + 7.0); // from the top down
    const double up = 0.95 - 1.25 * share;
    const double flat = std::sqrt(std::max(0.0, 1 - up * up));
    const auto a = numeric::sincos(golden_turn * nth + offset);
    return unit(Vec3{flat * a.cosine + 0.45 * outward, up, flat * a.sine});
}

bool is_head(const VineShape& shape, const Stem& stem, std::uint32_t node) {
    return stem.trunk && stem.end == StemEnd::crown && node + 1 == stem.nodes.size() && !shape.swellings.empty();
}

// Where the axis that went once stood. Its row tells as long as it is there; later the wood remembers by a draw.
Vec3 way_of_wound(const Vine& vine, const Wound& wound, const Stem& bearer, const StemNode& node) {
    if (const Axis* axis = vine.find(wound.axis); axis && axis->removed && axis->parent == wound.node) {
        const Vec3 first = point_of(vine.nodes_of(*axis)[0].place);
        if (length(first - node.place) > 1e-6) return unit(first - node.place);
    }
    const auto a = numeric::sincos(share_of(vine.seed, Look::wound_way, wound.id.value) * 2 * numeric::pi);
    Vec3 out = a.cosine * node.plane + a.sine * cross(node.along, node.plane);
    if (!bearer.trunk) out = out + Vec3{0, 0.6, 0};
    return square_part(out, node.along);
}

void add_swellings(VineShape& shape) {
    for (std::uint32_t s = 0; s < shape.stems.size(); ++s) {
        const Stem& stem = shape.stems[s];
        if (!stem.trunk || stem.end != StemEnd::crown || stem.age < 3) continue;
        const StemNode& top = stem.nodes.back();
        for (const double side : {-1.0, 1.0}) {
            const double vary = share_of(shape.seed, Look::crown, stem.axis.value, side < 0 ? 0 : 1);
            const double r = top.radius * (0.82 + 0.22 * vary);
            shape.swellings.push_back(
                {s,
                 top.place + Vec3{side * 0.55 * top.radius, (0.05 - 0.45 * vary) * top.radius, (vary - 0.5) * 0.3 * r},
                 r});
        }
    }
}

} // namespace

void add_wounds(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row) {
    add_swellings(shape);
    std::map<std::uint32_t, std::uint32_t> on_crown; // how many wounds each swelling bears so far
    for (const Wound& wound : vine.wounds) {
        const Axis* bearing = vine.find(axis_of(wound.node));
        if (!bearing) continue;
        const int at = stem_of_row[row_of(vine, *bearing)];
        if (at < 0) continue;
        const auto row = static_cast<std::uint32_t>(at);
        const Stem& stem = shape.stems[row];
        const std::uint32_t index = index_of(wound.node);
        if (stem.end_wound == wound.id && stem.end == StemEnd::cut) continue; // drawn as the stem's own end
        const bool own_end = wound.axis == axis_of(wound.node);
        if (own_end && !stem.trunk) continue; // an end that was cut back further since
        if (index >= stem.nodes.size()) continue;
        const StemNode& node = stem.nodes[index];
        const Radii radii{in_m(wound.major) / 2, in_m(wound.minor) / 2};
        const int winters = vine.winter - wound.winter;
        WoundShape drawn{wound.id, wound.axis,          wound.node, row,           {}, {}, {},
                         radii,    open_share(winters), winters,    wound.wood_age};
        if (winters > 0 && is_head(shape, stem, index)) {
            std::uint32_t k = 0;
            while (k + 1 < shape.swellings.size() && shape.swellings[k].stem != row) ++k;
            k += (wound.id.value + (own_end ? 1 : 0)) % 2;
            k = std::min<std::uint32_t>(k, static_cast<std::uint32_t>(shape.swellings.size()) - 1);
            const CrownShape& crown = shape.swellings[k];
            drawn.outward = way_on_crown(on_crown[k]++, crown.middle.x < node.place.x ? -1 : 1,
                                         6.28 * share_of(vine.seed, Look::crown, k, 3));
            drawn.root = crown.middle;
            drawn.face =
                crown.middle +
                (crown.radius + std::min(0.008, std::max(0.0, in_m(wound.beyond)) / (1 + winters))) * drawn.outward;
        } else {
            drawn.outward = way_of_wound(vine, wound, stem, node);
            drawn.root = node.place + 0.2 * node.radius * drawn.outward;
            drawn.face = node.place + (node.radius + std::max(0.0, in_m(wound.beyond)) / (1 + 0.5 * winters) + 0.0015) *
                                          drawn.outward;
        }
        shape.wounds.push_back(drawn);
    }
}

} // namespace spurwright::shape
