#include "sim/rules/measure_pieces.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright::rules {
namespace {

constexpr Length tenth_of_a_mm{100};
constexpr Length usual_wood{20'000}, short_joint{25'000}, very_short_joint{15'000}, short_of_node{5'000},
    left_uncut{10'000};

Length down_to_tenths(Length l) { return {l.count / tenth_of_a_mm.count * tenth_of_a_mm.count}; }

// Largest whole number whose square is at most n.
std::int64_t whole_root(std::int64_t n) {
    std::int64_t root = 0;
    for (std::int64_t bit = std::int64_t{1} << 31; bit > 0; bit >>= 1)
        if ((root + bit) * (root + bit) <= n) root += bit;
    return root;
}

struct CountBuds {
    int ripe = 0;                       // unripe ones die in winter (memory)
    std::uint32_t first = 0, last = 0;  // node indices; 0: none
};

CountBuds count_buds_to(const Vine& vine, const Axis& axis, const CountingHabits& habits, std::uint32_t last_node) {
    CountBuds buds;
    Length at;
    for (const Node& node : vine.nodes_of(axis)) {
        const std::uint32_t index = index_of(node.id);
        if (index > last_node) break;
        if (index > 0) at += node.joint;
        if (!is_count_bud(vine, axis, node, habits)) continue;
        if (at <= axis.ripe) ++buds.ripe;
        if (buds.first == 0) buds.first = index;
        buds.last = index;
    }
    return buds;
}

PerMille section_ratio(const Vine::Nodes& nodes) {
    std::int64_t major = 0, minor = 0;
    const auto add = [&](std::size_t i) { major += nodes[i].major.count, minor += nodes[i].minor.count; };
    if (nodes.size() <= 2)
        add(nodes.size() - 1);
    else
        for (std::size_t i = 2; i <= 3 && i < nodes.size(); ++i) add(i);
    return {static_cast<std::int32_t>(1000 * major / std::max<std::int64_t>(minor, 1))};
}

Length mean_joint(const Vine::Nodes& nodes, const CountBuds& buds) {
    if (buds.last == buds.first) return {};
    std::int64_t sum = 0;
    for (std::uint32_t i = buds.first + 1; i <= buds.last; ++i) sum += nodes[i].joint.count;
    return {static_cast<std::int32_t>(sum / (buds.last - buds.first))};
}

// From its crown over its first joints, mm.
struct Lead {
    double x = 0, y = 0, z = 0;
};
Lead first_joints(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    const Place &from = nodes[0].place, &to = nodes[std::min<std::size_t>(2, nodes.size() - 1)].place;
    return {in_mm(to.x - from.x), in_mm(to.y - from.y), in_mm(to.z - from.z)};
}

Angle angle_of(double across, double along) {
    if (across == 0.0 && along == 0.0) return {};
    return from_deg(numeric::degrees(numeric::atan2(across, along)));
}

// Angle between its first joints and the upright plane of the row.
Angle off_row_plane(const Vine& vine, const Axis& axis) {
    const Lead lead = first_joints(vine, axis);
    return angle_of(std::fabs(lead.z), std::sqrt(lead.x * lead.x + lead.y * lead.y));
}

// Angle between its first joints and straight up.
Angle off_upright(const Vine& vine, const Axis& axis) {
    const Lead lead = first_joints(vine, axis);
    return angle_of(std::sqrt(lead.x * lead.x + lead.z * lead.z), lead.y);
}

Points first_bud_points(const Vine& vine, const Axis& axis, std::uint32_t node) {
    if (node > 0)
        for (const Bud& bud : vine.buds_of(vine.nodes_of(axis)[node]))
            if (bud.kind == BudKind::node) return bud.points;
    return Points::outward;
}

PerMille joint_variation(const Vine::Nodes& nodes, std::uint32_t last) {
    std::int64_t sum = 0, squares = 0, n = 0;
    for (std::uint32_t i = 2; i <= last; ++i, ++n) {
        const std::int64_t joint = nodes[i].joint.count;
        sum += joint;
        squares += joint * joint;
    }
    if (sum == 0) return {};
    return {static_cast<std::int32_t>(1000 * whole_root(n * squares - sum * sum) / sum)};
}

HealthFacts health_of(const Vine& vine, const Axis& axis, const CountingHabits& habits, std::uint32_t last) {
    HealthFacts health;
    health.twin = is_double(vine, axis);
    Length along;
    for (const Node& node : vine.nodes_of(axis)) {
        const std::uint32_t index = index_of(node.id);
        if (index > last) break;
        if (index > 0) along += node.joint;
        health.spot = health.spot || node.harm == Harm::spot;
        health.wound = health.wound || node.harm == Harm::scar;
        health.cracked = health.cracked || node.harm == Harm::cracked;
        if (index == 0 || node.joint < habits.clear_joint) continue;
        for (const Bud& bud : vine.buds_of(node)) health.dead_buds += bud.kind == BudKind::node && bud.harmed;
    }
    if (along > axis.ripe) health.ripe_share = share_of(axis.ripe.count, along.count);
    return health;
}

EndCutFacts end_cut_of(const Vine& uncut, const Axis& axis, const PieceEnd& end, std::uint32_t last_bud) {
    const auto nodes = uncut.nodes_of(axis);
    EndCutFacts facts{end.beyond, std::nullopt, end.cut};
    for (std::uint32_t i = last_bud + 1; i <= end.last_node; ++i) facts.wood_beyond_bud += nodes[i].joint;
    if (last_bud + 1 < nodes.size()) facts.next_node = nodes[last_bud + 1].joint;
    return facts;
}

Length over_the_head(const Vine& vine, const Axis& axis, Side side) {
    const Length out = vine.nodes_of(axis)[0].place.x - vine.find(vine.head)->place.x;
    return side == Side::left ? out : -out;
}

// How deep the cane hangs below the wire once it has come to it.
Length sag_of(const Course& course, Length wire, std::uint32_t last_node) {
    constexpr Length at_wire{10'000};
    Length sag;
    bool arrived = false;
    for (std::uint32_t i = 0; i <= last_node; ++i) {
        const Length below = wire - course.places[i].y;
        arrived = arrived || (below <= at_wire && below >= -at_wire);
        if (arrived) sag = std::max(sag, below);
    }
    return sag;
}

bool more_ripe_wood(const Vine& uncut, const HouseRules& house, const Axis& axis, Side side, const Course& course,
                    std::uint32_t last_bud) {
    const auto nodes = uncut.nodes_of(axis);
    Length at = along(uncut, axis, last_bud);
    for (std::uint32_t i = last_bud + 1; i < nodes.size(); ++i) {
        at += nodes[i].joint;
        if (at > axis.ripe) return false;
        if (!is_count_bud(uncut, axis, nodes[i], house.habits())) continue;
        if (mean_diameter(nodes[i]) < house.cane_end_diameter.full_from) return false;
        const Length reach = reach_of(course, uncut, axis, side, canonical_end(uncut, axis, i));
        return free_wire_of(uncut, house, side, reach).count >= 0;
    }
    return false;
}

}  // namespace

PieceEnd canonical_end(const Vine& uncut, const Axis& axis, std::uint32_t last_node) {
    const bool at_last = last_node + 1 >= axis.node_count;
    const auto nodes = uncut.nodes_of(axis);
    const Length joint =
        at_last ? std::max(Length{}, axis.ripe - along(uncut, axis, last_node)) : nodes[last_node + 1].joint;
    if (at_last && joint <= left_uncut) return {last_node, joint, false};
    if (joint >= short_joint) return {last_node, usual_wood, true};
    return {last_node, down_to_tenths(joint < very_short_joint ? joint : joint - short_of_node), true};
}

std::optional<Fasten> canonical_tie(const Vine& uncut, const HouseRules& house, const Axis& axis, const Course& course,
                                    std::uint32_t last_node) {
    constexpr Length usual_place{15'000};
    const auto nodes = uncut.nodes_of(axis);
    const auto tie_at = [&](std::uint32_t node) -> std::optional<Fasten> {
        const Length wood = node < last_node ? nodes[node + 1].joint : canonical_end(uncut, axis, last_node).beyond;
        const Length middle = std::min(usual_place, Length{wood.count / 2});
        const Length place = down_to_tenths(std::max(middle, std::min(house.tying.bud_clear, wood)));
        if (!can_be_tied(uncut, course.places[node], true) || place < house.tying.bud_clear) return std::nullopt;
        if (pulls(uncut, axis, course, node) && course_of(uncut, axis, course.side, node).state == LaidState::snapped)
            return std::nullopt;
        return Fasten{node_id(axis.id, node), place, true};
    };
    for (const std::uint32_t inward : {1u, 0u, 2u})
        if (inward <= last_node)
            if (const auto tie = tie_at(last_node - inward)) return tie;
    return std::nullopt;
}

Length reach_of(const Course& course, const Vine& uncut, const Axis& axis, Side side, const PieceEnd& end) {
    const auto nodes = uncut.nodes_of(axis);
    const std::uint32_t i = end.last_node;
    const std::int64_t here = course.places[i].x.count;
    std::int64_t further = 0;  // along X, for `beyond` of wood
    if (i + 1 < nodes.size()) {
        further = (course.places[i + 1].x.count - here) * end.beyond.count / nodes[i + 1].joint.count;
    } else if (i > 0) {  // the tip runs on as the last joint does
        further = (here - course.places[i - 1].x.count) * end.beyond.count / nodes[i].joint.count;
    }
    const auto x = static_cast<std::int32_t>(here + further);
    return {side == Side::left ? -x : x};
}

std::optional<Length> room_of(const Vine& uncut, const HouseRules& house, Side side) {
    const NeighbourKind kind = uncut.neighbour(side).kind;
    if (kind == NeighbourKind::vine) return std::nullopt;
    // Where the next vine is missing and the house lets canes use the gap, the cane may run to the middle between the
    // missing vine and the one after it.
    const bool runs_on = kind == NeighbourKind::none && house.cane_reach.no_neighbour == NoNeighbour::run_on;
    // A single cane has the whole way to the next trunk; an end post stands halfway there.
    const bool whole = uncut.system == System::one_cane && kind == NeighbourKind::none;
    return Length{uncut.spacing.count / (whole ? 1 : 2) + (runs_on ? uncut.spacing.count : 0)};
}

Length free_wire_of(const Vine& uncut, const HouseRules& house, Side side, Length reach) {
    if (const auto room = room_of(uncut, house, side))  // a neighbour of two canes would end as far from the middle
        return {(uncut.system == System::one_cane ? 1 : 2) * (room->count - reach.count)};
    return uncut.spacing - reach - uncut.neighbour(side).reach;
}

CaneFacts measure_wood(const Vine& uncut, const HouseRules& house, const Axis& axis, const PieceEnd& end) {
    const CountingHabits habits = house.habits();
    const auto nodes = uncut.nodes_of(axis);
    const CountBuds buds = count_buds_to(uncut, axis, habits, end.last_node);
    CaneFacts cane;
    cane.axis = axis.id;
    cane.side = axis.side;
    cane.sucker = is_sucker(uncut, axis, habits);
    cane.rootstock = on_rootstock(uncut, axis);
    cane.wood_age = age(uncut, axis);
    cane.count_buds = buds.ripe;
    cane.diameter = thickness(uncut, axis);
    cane.axis_ratio = section_ratio(nodes);
    cane.mean_joint = mean_joint(nodes, buds);
    cane.joint_variation = joint_variation(nodes, buds.last);
    cane.end_diameter = mean_diameter(nodes[buds.last]);
    cane.distance_to_head = distance_to_head(uncut, axis);
    if (const auto origin = uncut.origin(axis.side)) cane.creep = cane.distance_to_head - *origin;
    cane.below_wire = below_wire(uncut, axis);
    cane.health = health_of(uncut, axis, habits, buds.last);
    cane.end = end_cut_of(uncut, axis, end, buds.last);
    return cane;
}

CaneFacts measure_cane(const Vine& uncut, const HouseRules& house, const Axis& axis, Side side, const Course& course,
                       const PieceEnd& end, const TyingFacts& how_tied) {
    CaneFacts cane = measure_wood(uncut, house, axis, end);
    const std::uint32_t last_bud = count_buds_to(uncut, axis, house.habits(), end.last_node).last;
    cane.side = side;
    cane.off_row = base_azimuth(uncut, axis, side);
    cane.over_the_head = over_the_head(uncut, axis, side);
    cane.reach = reach_of(course, uncut, axis, side, end);
    cane.free_wire = free_wire_of(uncut, house, side, cane.reach);
    const PieceEnd usual = canonical_end(uncut, axis, last_bud);
    if (!(usual == end))
        cane.usual_free_wire = free_wire_of(uncut, house, side, reach_of(course, uncut, axis, side, usual));
    cane.room = room_of(uncut, house, side);
    cane.more_ripe_wood = more_ripe_wood(uncut, house, axis, side, course, last_bud);
    cane.tying = how_tied;
    cane.tying.strain = course.strain;
    cane.tying.skin_crack = course.state == LaidState::skin_crack;
    cane.tying.sag = sag_of(course, fruiting_wire_height(uncut), end.last_node);
    return cane;
}

CaneFacts measure_cane(const Vine& uncut, const HouseRules& house, const Axis& axis, Side side, const Course& course,
                       std::uint32_t last_node) {
    TyingFacts how_tied;
    const auto tie = canonical_tie(uncut, house, axis, course, last_node);
    if (!tie) how_tied.end_tie = TyingFacts::EndTie::none;
    if (tie && pulls(uncut, axis, course, index_of(tie->at)))
        return measure_cane(uncut, house, axis, side, course_of(uncut, axis, side, index_of(tie->at)),
                            canonical_end(uncut, axis, last_node), how_tied);
    return measure_cane(uncut, house, axis, side, course, canonical_end(uncut, axis, last_node), how_tied);
}

SpurFacts measure_spur(const Vine& uncut, const HouseRules& house, const Axis& axis, const PieceEnd& end) {
    const CountBuds buds = count_buds_to(uncut, axis, house.habits(), end.last_node);
    SpurFacts spur;
    spur.axis = axis.id;
    spur.side = axis.side;
    spur.count_buds = buds.ripe;
    spur.first_joint_diameter = first_joint_diameter(uncut, axis);
    spur.health = health_of(uncut, axis, house.habits(), buds.last);
    spur.distance_to_head = distance_to_head(uncut, axis);
    if (const auto origin = uncut.origin(axis.side)) spur.creep = spur.distance_to_head - *origin;
    spur.below_wire = below_wire(uncut, axis);
    spur.off_row_plane = off_row_plane(uncut, axis);
    spur.first_bud = first_bud_points(uncut, axis, buds.first);
    spur.end = end_cut_of(uncut, axis, end, buds.last);
    spur.off_upright = off_upright(uncut, axis);
    return spur;
}

SpurFacts measure_spur(const Vine& uncut, const HouseRules& house, const Axis& axis, int buds) {
    int seen = 0;
    std::uint32_t last = 0;
    for (const Node& node : uncut.nodes_of(axis)) {
        if (!is_count_bud(uncut, axis, node, house.habits())) continue;
        last = index_of(node.id);
        if (++seen == buds) break;
    }
    return measure_spur(uncut, house, axis, canonical_end(uncut, axis, last));
}

SpurPlaceFacts place_of(const SpurFacts& spur, const CaneFacts* cane) {
    SpurPlaceFacts place{{spur.below_wire, spur.distance_to_head}, std::nullopt};
    if (cane) place.cane = SpurPlaceFacts::Base{cane->below_wire, cane->distance_to_head};
    return place;
}

}  // namespace spurwright::rules
