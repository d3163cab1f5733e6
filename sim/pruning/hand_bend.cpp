#include "sim/pruning/hand_bend.h"

#include <algorithm>

#include "sim/bending/laying.h"
#include "sim/pruning/cane_plane.h"
#include "sim/pruning/lay.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

// Part of the way from one place to another, in the plane's own numbers and back.
Length way_between(Length from, Length to, double share) { return {from.count + rounded(share * (to.count - from.count))}; }

}  // namespace

BendLevel level_of(Strain strain) {
    const auto share = [](int per_mille) { return static_cast<std::int32_t>(std::int64_t{strain_at_break.count} * per_mille / 1000); };
    if (strain > strain_at_break) return BendLevel::breaks;
    if (strain.count >= share(skin_crack_per_mille)) return BendLevel::skin;
    return strain.count >= share(warning_per_mille) ? BendLevel::creak : BendLevel::quiet;
}

HandBend hand_bend(const Vine& uncut, const Axis& axis, Side side, std::uint32_t node, PerMille pulled) {
    const auto nodes = uncut.nodes_of(axis);
    const CanePlane flat = cane_plane(uncut, axis, side);
    const auto last = static_cast<std::uint32_t>(nodes.size()) - 1;
    const std::uint32_t hand = std::clamp(node, 1u, last);
    const double share = as_share(std::clamp(pulled, PerMille{0}, whole));
    double down = 0;
    for (std::uint32_t i = 0; i < hand; ++i) down += bending::joint_of(flat.cane, i);
    bending::LayingHand laying;
    bending::HeldCane standing, held;
    laying.held_at(flat.cane, flat.wire, hand, 0.0, standing);
    laying.held_at(flat.cane, flat.wire, hand, share, held);
    const std::vector<Place> smooth = onto_vine(uncut, axis, flat, standing.at, down, 0.0), bent = onto_vine(uncut, axis, flat, held.at, down, share);
    HandBend bend{{}, {rounded(std::min(held.strain, 1.0) * 1e6)}, node_id(axis.id, held.worst), BendLevel::breaks};
    // Its zigzag, and how it wanders out of the plane, go as it comes down: nothing jumps as the hand takes hold.
    for (std::uint32_t i = 0; i <= last; ++i) {
        const Place &is = nodes[i].place, &s = smooth[i], &b = bent[i];
        const Place off{way_between(is.x - s.x, {}, share), way_between(is.y - s.y, {}, share), way_between(is.z - s.z, {}, share)};
        bend.places.push_back({b.x + off.x, b.y + off.y, b.z + off.z});
    }
    if (held.settled) bend.level = level_of(bend.strain);
    return bend;
}

}  // namespace spurwright
