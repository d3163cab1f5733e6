// Where temptations find their place.
#include "sim/growth/tempt/put.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// Our choice.
constexpr double sound_ratio = 1.10;
constexpr double straight_deg = 10; // a faultless cane leaves nearly along the row
constexpr Length near_the_head{160'000};

Length gap_between(Length a, Length b) { return a < b ? b - a : a - b; }

} // namespace

Error no_place(std::string_view name) {
    return {Fault::not_allowed, {"error.tempt.no-place"}, {{"text", std::string(name)}}, {}};
}

Error out_of_range(std::string_view name) {
    return {Fault::out_of_range, {"error.tempt.range"}, {{"text", std::string(name)}}, {}};
}

bool within(std::int64_t value, std::int64_t low, std::int64_t high) { return low <= value && value <= high; }

bool can_stand(Length diameter, Length joint) {
    return within(diameter.count, 3'000, 25'000) && within(joint.count, 30'000, 200'000);
}

std::vector<AxisId> canes_on(const Vine& vine, NodeId node) {
    std::vector<AxisId> found;
    for (const Axis& axis : vine.axes)
        if (axis.parent == node && age(vine, axis) == 1) found.push_back(axis.id);
    return found;
}

std::optional<NodeId> nearest_place(const Vine& vine, const std::vector<NodeId>& places, Side side, Length out) {
    std::optional<NodeId> best;
    const auto off = [&](NodeId place) { return gap_between(distance_to_head(vine, place, side), out); };
    for (const NodeId place : places)
        if (!best || off(place) < off(*best)) best = place;
    return best;
}

std::vector<NodeId> near_places(const Vine& vine, Side side) {
    std::vector<NodeId> places;
    for (const Axis& axis : vine.axes) {
        if (axis.side != side || axis.state != AxisState::live) continue;
        if (!was_spur_last_winter(vine, axis) && !was_laid_last_winter(vine, axis)) continue;
        for (const Node& node : vine.nodes_of(axis))
            if (index_of(node.id) > 0 && distance_to_head(vine, node.id, side) <= near_the_head) places.push_back(node.id);
    }
    return places;
}

AddedWood sound_cane(const Vine& vine, NodeId on, Side side, Length diameter, Length joint) {
    AddedWood wood;
    wood.on = on;
    wood.side = side;
    wood.born = vine.winter;
    wood.diameter_mm = in_mm(diameter);
    wood.joint_mm = in_mm(joint);
    wood.axis_ratio = sound_ratio;
    wood.azimuth_deg = straight_deg;
    return wood;
}

AxisId replace_cane(Vine& vine, const AddedWood& wood) {
    take_off(vine, canes_on(vine, wood.on));
    return add_wood(vine, wood);
}

} // namespace spurwright::growth
