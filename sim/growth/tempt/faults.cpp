// Temptations that are good canes with one fault.
#include <algorithm>

#include "sim/growth/tempt/put.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// Our choice.
constexpr std::uint32_t spotted_from = 1, spotted_to = 7;
constexpr Length scar_above_wire{300'000}; // where no pair of catch wires stands
constexpr std::size_t kept_buds = 10;      // a scar lies within the part that would be kept
constexpr double thinner_twin = 0.9;

// A good cane near the head, near `out`; where several stand the likelier place is the spur's.
template <class Fault>
Result<AddedWood> good_cane(const Vine& vine, const Fault& t) {
    if (!can_stand(t.diameter, t.joint) || !within(t.out.count, 0, 250'000)) return failure(out_of_range(t.name));
    const auto place = nearest_place(vine, near_places(vine, t.side), t.side, t.out);
    if (!place) return failure(no_place(t.name));
    return sound_cane(vine, *place, t.side, t.diameter, t.joint);
}

Node& node_row(Vine& vine, AxisId axis, std::uint32_t index) { return vine.nodes[vine.find(axis)->first_node + index]; }

} // namespace

Result<AxisId> put(Vine& vine, const CrackedBase& t) {
    const auto wood = good_cane(vine, t);
    if (!wood) return failure(wood.error());
    const AxisId cane = replace_cane(vine, *wood);
    node_row(vine, cane, 0).harm = Harm::cracked;
    return cane;
}

Result<AxisId> put(Vine& vine, const DoubleCane& t) {
    auto wood = good_cane(vine, t);
    if (!wood) return failure(wood.error());
    wood->towards_front = true;
    const AxisId cane = replace_cane(vine, *wood);
    AddedWood second = *wood;
    second.diameter_mm *= thinner_twin;
    second.azimuth_deg += 15; // they part at once
    second.towards_front = false;
    add_wood(vine, second);
    return cane;
}

Result<AxisId> put(Vine& vine, const ShortRipeCane& t) {
    if (!within(t.ripe.count, 200'000, 400'000)) return failure(out_of_range(t.name));
    const auto wood = good_cane(vine, t);
    if (!wood) return failure(wood.error());
    const AxisId cane = replace_cane(vine, *wood);
    Axis& axis = vine.axes[row_of(vine, *vine.find(cane))];
    axis.ripe = std::min(axis.ripe, t.ripe);
    Length at;
    for (std::uint32_t i = 1; i < axis.node_count; ++i) {
        const Node& node = vine.nodes[axis.first_node + i];
        at += node.joint;
        if (at <= axis.ripe) continue;
        for (std::uint32_t b = 0; b < node.bud_count; ++b) {
            Bud& bud = vine.buds[node.first_bud + b];
            bud.primary = bud.secondary = bud.tertiary = false;
            bud.harmed = true;
        }
    }
    return cane;
}

Result<AxisId> put(Vine& vine, const WireScar& t) {
    const auto wood = good_cane(vine, t);
    if (!wood) return failure(wood.error());
    Length rubs = fruiting_wire_height(vine) + scar_above_wire;
    for (const Wire& wire : vine.wires)
        if (wire.kind == WireKind::catching) {
            rubs = wire.height;
            break;
        }
    const AxisId cane = replace_cane(vine, *wood);
    const Axis& axis = *vine.find(cane);
    const auto buds = ripe_count_nodes(vine, axis);
    if (buds.empty()) return failure(no_place(t.name));
    std::uint32_t at = buds[std::min(buds.size(), kept_buds) - 1];
    for (std::uint32_t i = 1; i < at; ++i)
        if (vine.nodes_of(axis)[i].place.y >= rubs) at = i;
    node_row(vine, cane, at).harm = Harm::scar;
    return cane;
}

Result<AxisId> put(Vine& vine, const SpottedCane& t) {
    const auto wood = good_cane(vine, t);
    if (!wood) return failure(wood.error());
    const AxisId cane = replace_cane(vine, *wood);
    for (std::uint32_t i = spotted_from; i <= spotted_to && i < vine.find(cane)->node_count; ++i)
        node_row(vine, cane, i).harm = Harm::spot;
    return cane;
}

} // namespace spurwright::growth
