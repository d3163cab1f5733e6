#include "sim/growth/tempt.h"

#include <algorithm>
#include <optional>

#include "sim/growth/added_wood.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr int no_recipe = 255; // a drawn or edited vine
// All our choice: what else the wood is like that a scene's numbers leave open.
constexpr double sound_ratio = 1.10;
constexpr double straight_deg = 10; // a faultless cane leaves nearly along the row
constexpr double far_elbow_deg = 30, far_lean_deg = 58; // low enough that it can be laid from just below the wire
constexpr Length far_low{250'000}, far_high{400'000};
constexpr int upright_joints = 12, upright_canes = 3;
constexpr double upright_cane_mm = 7.5, upright_cane_joint_mm = 55, upright_azimuth_deg = 40;
// A finger of old wood: how far it leans to its side on its way up and how far it turns to and fro, mm; one cut a winter.
constexpr double finger_lean_mm = 46, finger_turn_mm = 9, finger_forward_mm = 14;
constexpr int finger_age = 6, finger_joints = 5;
constexpr Length finger_diameter{27'000}, finger_top_diameter{19'000};

Error no_place(std::string_view name) { return {Fault::not_allowed, {"error.tempt.no-place"}, {{"text", std::string(name)}}, {}}; }

bool within(std::int64_t value, std::int64_t low, std::int64_t high) { return low <= value && value <= high; }

// Thicker or longer-jointed than any shoot the model can stand.
bool can_stand(Length diameter, Length joint) {
    return within(diameter.count, 3'000, 25'000) && within(joint.count, 30'000, 200'000);
}

// One-year axes that stand on a node.
std::vector<AxisId> canes_on(const Vine& vine, NodeId node) {
    std::vector<AxisId> found;
    for (const Axis& axis : vine.axes)
        if (axis.parent == node && age(vine, axis) == 1) found.push_back(axis.id);
    return found;
}

Length gap(Length a, Length b) { return a < b ? b - a : a - b; }

// Of the places, the one nearest to `out` from the crown point; the first where two are as near.
std::optional<NodeId> nearest(const Vine& vine, const std::vector<NodeId>& places, Side side, Length out) {
    std::optional<NodeId> best;
    for (const NodeId place : places)
        if (!best || gap(distance_to_head(vine, place, side), out) < gap(distance_to_head(vine, *best, side), out)) best = place;
    return best;
}

// A new cane where the season grew another, or none.
AxisId replace_cane(Vine& vine, AddedWood wood) {
    take_off(vine, canes_on(vine, wood.on));
    wood.born = vine.winter;
    return add_wood(vine, wood);
}

AddedWood sound_cane(NodeId on, Side side, Length diameter, Length joint) {
    AddedWood wood;
    wood.on = on;
    wood.side = side;
    wood.diameter_mm = in_mm(diameter);
    wood.joint_mm = in_mm(joint);
    wood.axis_ratio = sound_ratio;
    wood.azimuth_deg = straight_deg;
    return wood;
}

struct Maker {
    Vine& vine;

    Result<AxisId> operator()(const FatTopCane& t) const {
        if (!can_stand(t.diameter, t.joint) || !within(t.axis_ratio.count, 1'000, 2'000) ||
            !within(t.above_wire.count, 0, 300'000))
            return failure(out_of_range(t.name));
        const Node& head = *vine.find(vine.head);
        const Length top = fruiting_wire_height(vine) + t.above_wire;
        if (top <= head.place.y) return failure(no_place(t.name));
        std::vector<Place> way;
        for (int i = 0; i <= finger_joints; ++i) {
            const double share = static_cast<double>(i) / finger_joints, turn = i == 0 || i == finger_joints ? 0 : i % 2 == 0 ? finger_turn_mm : -finger_turn_mm;
            way.push_back({head.place.x + from_mm(sign_of(t.side) * (finger_lean_mm * share + turn)),
                           head.place.y + from_mm(in_mm(top - head.place.y) * share),
                           head.place.z + from_mm(finger_forward_mm * share - turn / 2)});
        }
        way.back().y = top;
        const AxisId finger = add_finger(vine, vine.head, t.side, std::max(1, vine.winter - finger_age + 1), way, finger_diameter, finger_top_diameter);
        AddedWood wood = sound_cane(node_id(finger, finger_joints), t.side, t.diameter, t.joint);
        wood.born = vine.winter;
        wood.axis_ratio = as_share(t.axis_ratio);
        wood.grew = CaneClass::bull;
        wood.from_old_wood = true;
        return add_wood(vine, wood);
    }

    Result<AxisId> operator()(const FarCane& t) const {
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
        const auto place = nearest(vine, places, t.side, t.out);
        if (!place) return failure(no_place(t.name));
        AddedWood wood = sound_cane(*place, t.side, t.diameter, t.joint);
        wood.elbow_deg = far_elbow_deg;
        wood.lean_deg = far_lean_deg;
        return replace_cane(vine, wood);
    }

    Result<AxisId> operator()(const PlainNearCane& t) const {
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
        const auto place = nearest(vine, places, t.side, t.out);
        if (!place) return failure(no_place(t.name));
        return replace_cane(vine, sound_cane(*place, t.side, t.diameter, t.joint));
    }

    Result<AxisId> operator()(const OldUpright& t) const {
        if (!can_stand(t.diameter, Length{66'000}) || !within(t.off_vertical.count, 0, 60'000)) return failure(out_of_range(t.name));
        if (vine.winter < 4) return failure(no_place(t.name)); // its head is being trained yet
        AddedWood old = sound_cane(vine.crown(t.side), t.side, t.diameter, Length{66'000});
        old.born = vine.winter - 1;
        old.from_old_wood = true;
        old.azimuth_deg = upright_azimuth_deg;
        old.lean_deg = 90 - in_deg(t.off_vertical);
        old.elbow_deg = std::min(60.0, old.lean_deg);
        old.most_joints = upright_joints;
        const AxisId upright = add_wood(vine, old);
        const std::uint32_t last = vine.find(upright)->node_count - 1;
        for (std::uint32_t i = last + 1 - std::min<std::uint32_t>(upright_canes, last); i <= last; ++i) {
            AddedWood cane = sound_cane(node_id(upright, i), t.side, from_mm(upright_cane_mm), from_mm(upright_cane_joint_mm));
            cane.born = vine.winter;
            cane.lean_deg = 80;
            add_wood(vine, cane);
        }
        return upright;
    }

    static Error out_of_range(std::string_view name) {
        return {Fault::out_of_range, {"error.tempt.range"}, {{"text", std::string(name)}}, {}};
    }
};

} // namespace

Result<Tempted> tempted(const Vine& vine, const Temptation& temptation) {
    Tempted made{vine, {}};
    made.vine.recipe = no_recipe;
    const auto axis = std::visit(Maker{made.vine}, temptation);
    if (!axis) return failure(axis.error());
    made.axis = *axis;
    if (auto broken = check_vine(made.vine)) return failure(std::move(*broken));
    return made;
}

} // namespace spurwright::growth
