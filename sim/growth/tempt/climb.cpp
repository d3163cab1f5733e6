#include "sim/growth/tempt/climb.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/added_wood.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr std::uint32_t least_nodes = 4; // of a cane that the hedge cuts lower

bool lies(const Vine& vine, const Axis& axis) {
    return std::any_of(vine.laid.begin(), vine.laid.end(), [&](const Laid& laid) { return laid.axis == axis.id; });
}

Length length_between(const Place& a, const Place& b) {
    const double x = a.x.count - b.x.count, y = a.y.count - b.y.count, z = a.z.count - b.z.count;
    return {static_cast<std::int32_t>(std::ceil(std::sqrt(x * x + y * y + z * z)))};
}

// How high the hedge cut: the top of the highest cane.
Length hedge_top(const Vine& vine) {
    Length top;
    for (const Axis& axis : vine.axes)
        if (age(vine, axis) == 1 && axis.end == AxisEnd::hedge)
            for (const Node& node : vine.nodes_of(axis)) top = std::max(top, node.place.y);
    return top;
}

void stretch_trunk(Vine& vine, const Axis& trunk, Length top, Length by, std::vector<Length>& rise) {
    for (std::uint32_t i = 0; i < trunk.node_count; ++i) {
        Node& node = vine.nodes[trunk.first_node + i];
        rise[trunk.first_node + i] = from_mm(in_mm(by) * std::max(0.0, in_mm(node.place.y)) / in_mm(top));
        node.place.y += rise[trunk.first_node + i];
        if (i > 0) node.joint = std::max(node.joint, length_between(node.place, vine.nodes[trunk.first_node + i - 1].place));
    }
}

// Nodes above the hedge go, with what they bear.
void cut_at_hedge(Vine& vine, Length top) {
    std::vector<NodeId> first_off;
    std::vector<AxisId> borne;
    for (Axis& axis : vine.axes) {
        if (age(vine, axis) != 1 || is_trunk(axis)) continue;
        const auto nodes = vine.nodes_of(axis);
        std::uint32_t stays = axis.node_count;
        while (stays > least_nodes && nodes[stays - 1].place.y > top) --stays;
        if (stays == axis.node_count) continue;
        const NodeId off = node_id(axis.id, stays);
        first_off.push_back(off);
        for (const Axis& other : vine.axes)
            if (axis_of(other.parent) == axis.id && other.parent >= off) borne.push_back(other.id);
        axis.end = AxisEnd::hedge;
        axis.ripe = std::min(axis.ripe, along(vine, axis, stays - 1) + std::max(Length{}, top - nodes[stays - 1].place.y));
    }
    take_off(vine, borne);
    const auto gone = [&](NodeId node) {
        return std::any_of(first_off.begin(), first_off.end(), [&](NodeId off) { return axis_of(off) == axis_of(node) && node >= off; });
    };
    std::erase_if(vine.buds, [&](const Bud& bud) { return gone(node_of(bud.id)); });
    std::erase_if(vine.nodes, [&](const Node& node) { return gone(node.id); });
    link_rows(vine);
}

} // namespace

void raise_head(Vine& vine, Length by) {
    const Length hedge = hedge_top(vine), wire = fruiting_wire_height(vine), top = vine.find(vine.head)->place.y;
    std::vector<Length> rise(vine.nodes.size());
    for (const Axis& axis : vine.axes) { // parents first
        if (is_trunk(axis)) {
            stretch_trunk(vine, axis, top, by, rise);
            continue;
        }
        const Length of_base = rise[static_cast<std::size_t>(vine.find(axis.parent) - vine.nodes.data())];
        const bool laid = lies(vine, axis);
        for (std::uint32_t i = 0; i < axis.node_count; ++i) {
            Length& y = vine.nodes[axis.first_node + i].place.y;
            // No two nodes of a laid cane part by this: none rises more than the one below it, or past the wire.
            const Length to = laid ? std::min(y + of_base, std::max(y, wire)) : y + of_base;
            rise[axis.first_node + i] = to - y;
            y = to;
        }
    }
    if (hedge > Length{}) cut_at_hedge(vine, hedge);
    link_rows(vine); // opens a new book of courses
}

} // namespace spurwright::growth
