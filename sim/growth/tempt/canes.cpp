// Temptations of place and of form: one cane of last summer added, or grown otherwise than the season grew it.
#include <algorithm>

#include "sim/growth/tempt/put.h"
#include "sim/growth/trunks.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// All our choice: what else the wood is like that a scene's numbers leave open.
constexpr double far_elbow_deg = 30, far_lean_deg = 58; // low enough that it can be laid from just below the wire
constexpr Length far_low{250'000}, far_high{400'000};
constexpr Length to_the_bend{30'000}; // so far below the wire a laid cane's bend is over
constexpr double sucker_azimuth_deg = 35;
constexpr Length clear_of_graft{25'000};
constexpr double shaded_azimuth_deg = 40, shaded_lean_deg = 66;
constexpr double lateral_on_low = 0.12, lateral_on_high = 0.35; // of its bearer's length
constexpr double least_bearer = 1.02;                           // a bearer is at least so much thicker
// A neighbour's cane: where its base stands past its own end of the wire, and how it leans over.
constexpr double over_base_mm = 120, over_above_wire_mm = 12, over_lean_deg = 54, over_elbow_deg = 30;
constexpr int least_over_nodes = 6;

// The trunk's nodes whose height lies within.
std::vector<NodeId> trunk_nodes(const Vine& vine, Side side, const auto& fits) {
    std::vector<NodeId> found;
    const Axis& trunk = *vine.find(axis_of(vine.crown(side)));
    for (const Node& node : vine.nodes_of(trunk))
        if (index_of(node.id) > 0 && fits(node)) found.push_back(node.id);
    return found;
}

Result<AxisId> put_sucker(Vine& vine, const auto& t, const std::vector<NodeId>& places) {
    const Node* best = nullptr;
    const auto off = [&](const Node& node) { return std::abs(node.place.y.count - t.height.count); };
    for (const NodeId place : places)
        if (const Node& node = *vine.find(place); !best || off(node) < off(*best)) best = &node;
    if (!best) return failure(no_place(t.name));
    AddedWood wood = sound_cane(vine, best->id, t.side, t.diameter, t.joint);
    wood.from_old_wood = true;
    wood.azimuth_deg = sucker_azimuth_deg;
    wood.lean_deg = 82; // it grew up through the middle of the vine
    return add_wood(vine, wood);
}

} // namespace

Result<AxisId> put(Vine& vine, const FarCane& t) {
    if (!can_stand(t.diameter, t.joint) || t.out < far_low || t.out > far_high) return failure(out_of_range(t.name));
    std::vector<NodeId> places;
    for (const Axis& axis : vine.axes) {
        if (axis.side != t.side || axis.state != AxisState::live || !was_laid_last_winter(vine, axis)) continue;
        for (const Node& node : vine.nodes_of(axis)) {
            if (index_of(node.id) == 0) continue;
            const Length out = distance_to_head(vine, node.id, t.side);
            if (far_low <= out && out <= far_high) places.push_back(node.id);
        }
    }
    const auto place = nearest_place(vine, places, t.side, t.out);
    if (!place) return failure(no_place(t.name));
    AddedWood wood = sound_cane(vine, *place, t.side, t.diameter, t.joint);
    wood.elbow_deg = far_elbow_deg;
    wood.lean_deg = far_lean_deg;
    return replace_cane(vine, wood);
}

Result<AxisId> put(Vine& vine, const PlainNearCane& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.out.count, 0, 250'000)) return failure(out_of_range(t.name));
    std::vector<NodeId> places;
    for (const Axis& axis : vine.axes) {
        if (axis.side != t.side || axis.state != AxisState::live || !was_spur_last_winter(vine, axis)) continue;
        bool lower = false; // another cane stands on this spur, nearer to the head
        for (const Node& node : vine.nodes_of(axis)) {
            if (index_of(node.id) == 0) continue;
            if (lower) places.push_back(node.id);
            lower = lower || !canes_on(vine, node.id).empty();
        }
    }
    const auto place = nearest_place(vine, places, t.side, t.out);
    if (!place) return failure(no_place(t.name));
    return replace_cane(vine, sound_cane(vine, *place, t.side, t.diameter, t.joint));
}

Result<AxisId> put(Vine& vine, const AlleyCane& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.azimuth.count, 70'000, 90'000)) return failure(out_of_range(t.name));
    AddedWood wood = sound_cane(vine, vine.crown(t.side), t.side, t.diameter, t.joint);
    wood.from_old_wood = true;
    wood.azimuth_deg = in_deg(t.azimuth);
    return add_wood(vine, wood);
}

Result<AxisId> put(Vine& vine, const BendBull& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.axis_ratio.count, 1'000, 2'000)) return failure(out_of_range(t.name));
    const Length wire = fruiting_wire_height(vine);
    for (const Axis& axis : vine.axes) {
        if (axis.side != t.side || axis.state != AxisState::live || !was_laid_last_winter(vine, axis)) continue;
        for (const Node& node : vine.nodes_of(axis)) {
            if (index_of(node.id) < 2 || node.place.y < wire - to_the_bend) continue;
            AddedWood wood = sound_cane(vine, node.id, t.side, t.diameter, t.joint);
            wood.axis_ratio = as_share(t.axis_ratio);
            wood.grew = CaneClass::bull;
            wood.lean_deg = 84; // from a laid cane shoots stand upright at once
            return replace_cane(vine, wood);
        }
    }
    return failure(no_place(t.name));
}

Result<AxisId> put(Vine& vine, const TrunkSucker& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.height.count, 50'000, 1'000'000)) return failure(out_of_range(t.name));
    const Length union_height = vine.graft ? vine.find(vine.graft)->place.y : Length{};
    const Length crown = vine.find(vine.crown(t.side))->place.y;
    return put_sucker(vine, t, trunk_nodes(vine, t.side, [&](const Node& node) {
        return node.place.y > union_height + clear_of_graft && node.place.y + CountingHabits{}.sucker_zone < crown - clear_of_graft;
    }));
}

Result<AxisId> put(Vine& vine, const RootstockSucker& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.height.count, 0, 300'000)) return failure(out_of_range(t.name));
    std::vector<NodeId> places;
    if (vine.graft)
        for (const Node& node : vine.nodes_of(*vine.find(axis_of(vine.graft))))
            if (index_of(node.id) > 0 && node.id < vine.graft) places.push_back(node.id);
    return put_sucker(vine, t, places);
}

Result<AxisId> put(Vine& vine, const NeighbourCane& t) {
    if (!can_stand(t.diameter, t.joint)) return failure(out_of_range(t.name));
    const Neighbour& neighbour = vine.neighbour(t.side);
    if (neighbour.kind != NeighbourKind::vine) return failure(no_place(t.name));
    OverhangingWood wood;
    wood.side = t.side;
    wood.diameter_mm = in_mm(t.diameter);
    wood.joint_mm = in_mm(t.joint);
    wood.elbow_deg = over_elbow_deg;
    wood.lean_deg = over_lean_deg;
    const double out = in_mm(vine.spacing - neighbour.reach) + over_base_mm; // from this vine's trunk
    wood.foot = {from_mm(sign_of(t.side) * out), fruiting_wire_height(vine) + from_mm(over_above_wire_mm), Length{}};
    const AxisId cane = add_overhanging(vine, wood);
    if (vine.find(cane)->node_count < least_over_nodes) return failure(no_place(t.name));
    return cane;
}

Result<AxisId> put(Vine& vine, const LateralLikeCane& t) {
    if (!can_stand(t.diameter, t.joint)) return failure(out_of_range(t.name));
    const Axis* bearer = nullptr;
    for (const Axis& axis : vine.axes)
        if (axis.side == t.side && axis.state == AxisState::live && is_cane(vine, axis) && !is_sucker(vine, axis) && axis.node_count >= 10 &&
            (!bearer || thickness(vine, axis) > thickness(vine, *bearer)))
            bearer = &axis;
    if (!bearer) return failure(no_place(t.name));
    const Length whole_way = along(vine, *bearer, bearer->node_count - 1);
    NodeId on;
    for (std::uint32_t i = 2; i < bearer->node_count && !on; ++i) {
        const double share = static_cast<double>(along(vine, *bearer, i).count) / whole_way.count;
        const Length d = mean_diameter(vine.nodes_of(*bearer)[i]);
        if (share >= lateral_on_low && share <= lateral_on_high && d.count >= least_bearer * t.diameter.count) on = vine.nodes_of(*bearer)[i].id;
    }
    if (!on) return failure(no_place(t.name));
    const AxisId lateral = replace_cane(vine, sound_cane(vine, on, t.side, t.diameter, t.joint));
    vine.nodes[static_cast<std::size_t>(vine.find(on) - vine.nodes.data())].lateral = Lateral::axis;
    return lateral;
}

Result<AxisId> put(Vine& vine, const ShadedCane& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.axis_ratio.count, 1'000, 2'000)) return failure(out_of_range(t.name));
    AddedWood wood = sound_cane(vine, vine.crown(t.side), t.side, t.diameter, t.joint);
    wood.axis_ratio = as_share(t.axis_ratio);
    wood.grew = CaneClass::shaded;
    wood.from_old_wood = true;
    wood.azimuth_deg = shaded_azimuth_deg;
    wood.lean_deg = shaded_lean_deg;
    const AxisId cane = add_wood(vine, wood);
    const Axis& axis = *vine.find(cane);
    for (std::uint32_t i = 0; i < axis.node_count; ++i) { // in the shade no tendril takes hold
        Tendril& tendril = vine.nodes[axis.first_node + i].tendril;
        if (tendril == Tendril::gripping) tendril = Tendril::loose;
    }
    return cane;
}

Result<AxisId> put(Vine& vine, const SingleSpurPlace& t) {
    if (!can_stand(t.diameter, t.joint) || !can_stand(t.further_diameter, t.joint) || !within(t.out.count, 0, 80'000) ||
        !within(t.further_out.count, t.out.count + 20'000, 250'000) || !within(t.others.count, 2'000, 8'000))
        return failure(out_of_range(t.name));
    const Node& crown = *vine.find(vine.crown(t.side));
    const auto low = nearest_place(vine, trunk_nodes(vine, t.side, [&](const Node& node) { return node.id <= crown.id; }), t.side, t.out);
    std::vector<NodeId> out_there;
    for (const NodeId place : near_places(vine, t.side)) {
        const Length away = distance_to_head(vine, place, t.side);
        if (vine.find(place)->place.y > vine.find(*low)->place.y && away > t.out && away <= Length{130'000}) out_there.push_back(place);
    }
    const auto further = nearest_place(vine, out_there, t.side, t.further_out);
    if (!further) return failure(no_place(t.name));
    for (std::size_t row = 0; row < vine.axes.size(); ++row) {
        const Axis& axis = vine.axes[row];
        if (axis.side != t.side || age(vine, axis) != 1) continue;
        Length widest;
        for (const Node& node : vine.nodes_of(axis)) widest = std::max(widest, mean_diameter(node));
        if (widest <= t.others) continue;
        const double by = static_cast<double>(t.others.count) / widest.count;
        for (std::uint32_t i = 0; i < axis.node_count; ++i) {
            Node& node = vine.nodes[axis.first_node + i];
            node.major = {rounded(node.major.count * by)};
            node.minor = {rounded(node.minor.count * by)};
        }
    }
    replace_cane(vine, sound_cane(vine, *further, t.side, t.further_diameter, t.joint));
    AddedWood wood = sound_cane(vine, *low, t.side, t.diameter, t.joint);
    wood.from_old_wood = true;
    return add_wood(vine, wood);
}

} // namespace spurwright::growth
