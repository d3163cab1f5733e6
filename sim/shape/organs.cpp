// The plane that the buds of a stem stand in, and the buds, tendrils and bunch stems themselves.
#include <array>

#include "sim/core/numeric.h"
#include "sim/shape/frames.h"
#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

constexpr double twist_low = 0.2, twist_high = 0.5; // radians a metre: the slow turn of the bud plane, our choice

Vec3 way_of(Points points, Side side, double across) {
    switch (points) {
    case Points::up: return {0, 1, 0};
    case Points::down: return {0, -1, 0};
    case Points::outward: return {side == Side::left ? -1.0 : 1.0, 0, 0};
    case Points::inward: return {side == Side::left ? 1.0 : -1.0, 0, 0};
    case Points::across: break;
    }
    return {0, 0, across};
}

// What the zig-zag of the places tells: nodes stand off the line of their neighbours towards their own bud.
Vec3 zigzag_of(const Stem& stem) {
    Vec3 sum;
    for (std::size_t i = 1; i + 1 < stem.nodes.size(); ++i) {
        const Vec3 off = stem.nodes[i].place - 0.5 * (stem.nodes[i - 1].place + stem.nodes[i + 1].place);
        sum = sum + static_cast<double>(stem.nodes[i].rank) * off;
    }
    return sum;
}

// The angle about the first frame that agrees best with the bud directions of the tables.
double best_turn(const Stem& stem, const std::vector<Frame>& frames, const std::vector<const Bud*>& buds,
                 double twist) {
    double best = 0, most = -1e9;
    for (int k = 0; k < 48; ++k) {
        const double turn = 2 * numeric::pi * k / 48;
        double sum = 0;
        for (std::size_t i = 0; i < stem.nodes.size(); ++i) {
            if (!buds[i]) continue;
            const auto a = numeric::sincos(turn + twist * stem.nodes[i].from_root);
            const Vec3 out = stem.nodes[i].rank * (a.cosine * frames[i].out + a.sine * frames[i].side());
            const Vec3 wanted = way_of(buds[i]->points, stem.side, out.z >= 0 ? 1 : -1);
            sum += dot(out, wanted);
        }
        if (sum > most + 1e-9) most = sum, best = turn;
    }
    return best;
}

void set_planes(Stem& stem, const Vine& vine, const Axis& axis) {
    std::vector<Vec3> places, tangents;
    std::vector<const Bud*> buds;
    const auto rows = vine.nodes_of(axis);
    for (std::size_t i = 0; i < stem.nodes.size(); ++i) {
        places.push_back(stem.nodes[i].place);
        tangents.push_back(stem.nodes[i].along);
        const Bud* node_bud = nullptr;
        for (const Bud& bud : vine.buds_of(rows[i]))
            if (bud.kind == BudKind::node && !node_bud) node_bud = &bud;
        buds.push_back(node_bud);
        stem.nodes[i].has_bud = node_bud != nullptr;
    }
    const Vec3 zigzag = zigzag_of(stem);
    if (length(zigzag) > 0.0004 * static_cast<double>(stem.nodes.size())) {
        for (StemNode& node : stem.nodes) node.plane = square_part(zigzag, node.along);
        return;
    }
    const auto frames = frames_along(places, tangents, any_square_to(tangents[0]));
    const double twist = twist_low + (twist_high - twist_low) * share_of(vine.seed, Look::twist, axis.id.value);
    const double turn = best_turn(stem, frames, buds, twist);
    for (std::size_t i = 0; i < stem.nodes.size(); ++i) {
        const auto a = numeric::sincos(turn + twist * stem.nodes[i].from_root);
        stem.nodes[i].plane = a.cosine * frames[i].out + a.sine * frames[i].side();
    }
}

void add_buds(VineShape& shape, const Vine& vine, std::uint32_t at, const Node& row, std::uint32_t i) {
    const Stem& stem = shape.stems[at];
    const StemNode& node = stem.nodes[i];
    int ring = 0;
    for (const Bud& bud : vine.buds_of(row)) {
        BudShape drawn{bud.id,     at,          i,
                       bud.kind,   node.place,  static_cast<double>(node.rank) * node.plane,
                       node.along, node.radius, bud.harmed};
        if (bud.kind == BudKind::latent) continue; // under the bark
        if (bud.kind == BudKind::crown) {          // 2-3 small ones round the ring at the base
            const auto a = numeric::sincos(2.1 * ring++ + 6.28 * share_of(vine.seed, Look::bud_size, bud.id.value));
            drawn.out = a.cosine * node.plane + a.sine * cross(node.along, node.plane);
        }
        shape.buds.push_back(drawn);
    }
}

} // namespace

void add_organs(VineShape& shape, const Vine& vine, const std::vector<int>& stem_of_row) {
    for (std::uint32_t row = 0; row < vine.axes.size(); ++row) {
        if (stem_of_row[row] < 0) continue;
        const auto at = static_cast<std::uint32_t>(stem_of_row[row]);
        const auto rows = vine.nodes_of(vine.axes[row]);
        set_planes(shape.stems[at], vine, vine.axes[row]);
        const Stem& stem = shape.stems[at];
        for (std::uint32_t i = 0; i < stem.nodes.size(); ++i) {
            add_buds(shape, vine, at, rows[i], i);
            if (rows[i].tendril == Tendril::none && rows[i].bunch == Bunch::none) continue;
            const StemNode& node = stem.nodes[i];
            shape.hangers.push_back({node.node, at, rows[i].tendril, rows[i].bunch, node.place, -node.rank * node.plane,
                                     node.along, node.radius});
        }
    }
}

} // namespace spurwright::shape
