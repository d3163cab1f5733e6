// Wires, posts, clips, stake, drip line and ties. Heights and gaps are the site's; what no table holds is our choice.
#include <algorithm>

#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

constexpr double wire_radius = 0.00125;
constexpr double drip_radius = 0.008;
constexpr double reach_of_row = 5.0; // vines drawn each way
constexpr int vines_a_post = 3;      // our choice: 5.4 m at 1.8 m

} // namespace

void add_trellis(VineShape& shape, const Vine& vine) {
    TrellisShape& t = shape.trellis;
    t.fruiting_height = in_m(fruiting_wire_height(vine));
    t.near_end = -reach_of_row * shape.spacing;
    t.far_end = reach_of_row * shape.spacing;
    double top = t.fruiting_height;
    double dropped = 0;
    for (const Wire& wire : vine.wires) {
        const bool down = wire.state == WireState::down;
        double height = in_m(wire.height);
        top = std::max(top, height);
        if (down) height = t.fruiting_height + 0.035 + 0.012 * dropped++; // hung on the post beside the fruiting wire
        const double gap = in_m(wire.half_gap);
        const double radius = wire.kind == WireKind::drip ? drip_radius : wire_radius;
        if (gap > 0) {
            t.wires.push_back({wire.id, wire.kind, height, gap, radius, down});
            t.wires.push_back({wire.id, wire.kind, height, -gap, radius, down});
            t.clip_half_gap = gap;
        } else {
            t.wires.push_back({wire.id, wire.kind, height, 0, radius, down});
        }
    }
    t.hedge_height = t.fruiting_height + 1.0;
    for (const Side side : both_sides)
        if (vine.neighbour(side).kind == NeighbourKind::end_post) {
            const double x = sign_of(side) * shape.spacing;
            t.posts.push_back({x, top + 0.15, true});
            (side == Side::left ? t.near_end : t.far_end) = x;
        }
    for (int k = -2; k <= 1; ++k) {
        const double x = (0.5 + vines_a_post * k) * shape.spacing;
        if (x > t.near_end + 0.5 * shape.spacing && x < t.far_end - 0.5 * shape.spacing)
            t.posts.push_back({x, top + 0.1, false});
    }
    for (const WireShape& wire : t.wires) {
        if (wire.kind != WireKind::catching || wire.across <= 0 || wire.dropped) continue;
        for (int k = 0; k < 5; ++k) {
            const double share = share_of(vine.seed, Look::clip, wire.wire.value, static_cast<std::uint32_t>(k));
            const double x = shape.spacing * (-2.5 + k + 0.7 * share) + 0.37;
            if (x > t.near_end && x < t.far_end) t.clips.push_back({x, wire.height, 0});
        }
    }
    t.stake_foot = {0.012, -0.05, -0.055};
    t.stake_top = t.fruiting_height + 0.02;
}

Vec3 nearest_on_wire(const TrellisShape& trellis, Vec3 place) {
    Vec3 nearest = place;
    double least = 1e9;
    for (const WireShape& wire : trellis.wires) {
        if (wire.kind == WireKind::drip) continue;
        const Vec3 at{place.x, wire.height, wire.across};
        const double away = dot(at - place, at - place);
        if (away < least) least = away, nearest = at;
    }
    return nearest;
}

void add_ties(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row) {
    for (const Tie& tie : vine.ties) {
        const Axis* axis = vine.find(axis_of(tie.node));
        const int at = axis ? stem_of_row[row_of(vine, *axis)] : -1;
        if (at < 0 || tie.state == TieState::cut) continue;
        const Stem& stem = shape.stems[static_cast<std::size_t>(at)];
        if (index_of(tie.node) >= stem.nodes.size()) continue;
        const StemNode& node = stem.nodes[index_of(tie.node)];
        // Along the line beyond the node, into whatever segment follows.
        std::size_t segment = 0;
        for (std::size_t p = 0; p < stem.line.points().size(); ++p)
            if (stem.line.points()[p].node == static_cast<int>(index_of(tie.node))) segment = p;
        segment = std::min(segment, stem.line.segment_count() - 1);
        const double share = std::clamp(in_m(tie.beyond) / stem.line.segment_length(segment), 0.0, 1.0);
        const LineSample sample = stem.line.at(segment, share);
        shape.ties.push_back({tie.id, node.node, sample.place, sample.along,
                              nearest_on_wire(shape.trellis, sample.place), sample.radii.mean(),
                              vine.winter - tie.winter, tie.tight, tie.state});
    }
}

} // namespace spurwright::shape
