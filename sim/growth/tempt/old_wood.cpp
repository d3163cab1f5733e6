// Temptations that bring old wood with them: a finger above the wire, last winter's upright, a climbed head.
#include <algorithm>
#include <set>

#include "sim/growth/tempt/climb.h"
#include "sim/growth/tempt/put.h"
#include "sim/growth/trunks.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// All our choice: what else the wood is like that a scene's numbers leave open.
constexpr int upright_joints = 12, upright_canes = 3;
constexpr double upright_cane_mm = 7.5, upright_cane_joint_mm = 55, upright_azimuth_deg = 40;
// A finger of old wood: how far it leans to its side on its way up and how far it turns to and fro, mm; one cut a winter.
constexpr double finger_lean_mm = 46, finger_turn_mm = 9, finger_forward_mm = 14;
constexpr int finger_age = 6, finger_joints = 5;
constexpr Length finger_diameter{27'000}, finger_top_diameter{19'000};
// A dead arm's stub on a climbed head, and the scars of those that were sawn off.
constexpr int dead_arm_age = 10, dead_arm_joints = 3;
constexpr double dead_arm_mm = 75, dead_arm_lean_mm = 34;
constexpr std::array<Length, 3> sawn_scars{{{33'000}, {27'000}, {24'000}}};
constexpr Length scar_wood{5'000};

// A name that wood once had which stands no more, or a free one, for a scar's wood. Ids of the table are never used.
AxisId name_of_gone_wood(const Vine& vine, std::set<std::uint32_t>& used) {
    std::uint32_t id = second_trunk.value + 1;
    while (vine.find(AxisId{id}) || used.count(id)) ++id;
    used.insert(id);
    return {id};
}

void add_sawn_scars(Vine& vine) {
    std::set<std::uint32_t> used;
    const Axis& trunk = *vine.find(axis_of(vine.head));
    for (std::size_t i = 0; i < sawn_scars.size(); ++i) {
        Wound scar;
        scar.id = {vine.wounds.empty() ? 1 : vine.wounds.back().id.value + 1};
        scar.axis = name_of_gone_wood(vine, used);
        scar.node = node_id(trunk.id, trunk.node_count - 1 - static_cast<std::uint32_t>(i) % 2);
        scar.beyond = scar_wood;
        scar.major = sawn_scars[i];
        scar.minor = {scar.major.count * 9 / 10};
        scar.wood_age = dead_arm_age - 2 * static_cast<int>(i);
        scar.winter = std::max(1, vine.winter - 2 - 2 * static_cast<int>(i));
        scar.tool = Tool::saw;
        vine.wounds.push_back(scar);
    }
}

} // namespace

Result<AxisId> put(Vine& vine, const FatTopCane& t) {
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
    AddedWood wood = sound_cane(vine, node_id(finger, finger_joints), t.side, t.diameter, t.joint);
    wood.axis_ratio = as_share(t.axis_ratio);
    wood.grew = CaneClass::bull;
    wood.from_old_wood = true;
    return add_wood(vine, wood);
}

Result<AxisId> put(Vine& vine, const OldUpright& t) {
    if (!can_stand(t.diameter, Length{66'000}) || !within(t.off_vertical.count, 0, 60'000)) return failure(out_of_range(t.name));
    if (vine.winter < 4) return failure(no_place(t.name)); // its head is being trained yet
    AddedWood old = sound_cane(vine, vine.crown(t.side), t.side, t.diameter, Length{66'000});
    old.born = vine.winter - 1;
    old.from_old_wood = true;
    old.azimuth_deg = upright_azimuth_deg;
    old.lean_deg = 90 - in_deg(t.off_vertical);
    old.elbow_deg = std::min(60.0, old.lean_deg);
    old.most_joints = upright_joints;
    const AxisId upright = add_wood(vine, old);
    const std::uint32_t last = vine.find(upright)->node_count - 1;
    for (std::uint32_t i = last + 1 - std::min<std::uint32_t>(upright_canes, last); i <= last; ++i) {
        AddedWood cane = sound_cane(vine, node_id(upright, i), t.side, from_mm(upright_cane_mm), from_mm(upright_cane_joint_mm));
        cane.lean_deg = 80;
        add_wood(vine, cane);
    }
    return upright;
}

Result<AxisId> put(Vine& vine, const ClimbedHead& t) {
    if (!within(t.below_wire.count, 10'000, 30'000) || !within(t.stub.count, 15'000, 60'000)) return failure(out_of_range(t.name));
    const Length crowns{(vine.find(vine.crown_left)->place.y.count + vine.find(vine.crown_right)->place.y.count) / 2};
    const Length by = fruiting_wire_height(vine) - t.below_wire - crowns;
    if (by <= Length{} || vine.winter < dead_arm_age / 2) return failure(no_place(t.name)); // it has climbed by itself, or is young
    raise_head(vine, by);
    add_sawn_scars(vine);
    const Node& foot = *vine.find(vine.crown(t.side));
    std::vector<Place> way;
    for (int i = 0; i < dead_arm_joints; ++i) {
        const double share = (i + 0.3) / (dead_arm_joints - 0.7);
        way.push_back({foot.place.x + from_mm(sign_of(t.side) * dead_arm_lean_mm * share), foot.place.y + from_mm(dead_arm_mm * share),
                       foot.place.z - from_mm(12 * share)});
    }
    const AxisId stub = add_finger(vine, vine.crown(t.side), t.side, std::max(1, vine.winter - dead_arm_age + 1), way, t.stub, Length{t.stub.count * 19 / 20});
    vine.axes.back().state = AxisState::dead;
    std::erase_if(vine.buds, [&](const Bud& bud) { return axis_of(node_of(bud.id)) == stub; });
    link_rows(vine);
    return stub;
}

} // namespace spurwright::growth
