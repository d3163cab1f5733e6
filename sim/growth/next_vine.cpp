#include "sim/growth/next_vine.h"

#include <algorithm>

#include "sim/core/check.h"

namespace spurwright::growth {

std::uint8_t& NextVine::latent_at(NodeId node) {
    const Node* row = vine.find(node);
    SPURWRIGHT_CHECK(row != nullptr, ==, true);
    const auto at = static_cast<std::size_t>(row - vine.nodes.data());
    SPURWRIGHT_CHECK(at, <, old_nodes);
    return latent[at];
}

AxisId NextVine::next_axis_id() const { return {highest_id + 1}; }

std::size_t NextVine::add_axis(NodeId parent, Side side) {
    Axis axis;
    axis.id = next_axis_id();
    highest_id = axis.id.value;
    axis.parent = parent;
    axis.born = vine.winter;
    axis.order = vine.find(axis_of(parent))->order + 1;
    axis.side = side;
    axis.first_node = static_cast<std::uint32_t>(vine.nodes.size());
    vine.axes.push_back(axis);
    return vine.axes.size() - 1;
}

Node& NextVine::add_node(Length joint, Length major, Length minor, const Place& place, NewBud bud) {
    Axis& axis = vine.axes.back();
    SPURWRIGHT_CHECK(axis.node_count, <=, highest_node_index);
    Node node;
    node.id = node_id(axis.id, axis.node_count);
    node.joint = joint;
    node.major = major;
    node.minor = minor;
    node.place = place;
    node.rank = axis.node_count % 2 == 1 ? 1 : -1;
    ++axis.node_count;
    vine.nodes.push_back(node);
    buds.push_back(bud);
    return vine.nodes.back();
}

void NextVine::drop_last_axis() {
    const Axis& axis = vine.axes.back();
    vine.nodes.resize(axis.first_node);
    buds.resize(axis.first_node - old_nodes);
    vine.axes.pop_back();
}

void NextVine::finish(int base_buds) {
    const auto add = [&](const Node& node, std::uint32_t slot, BudKind kind, Points points, bool alive) {
        vine.buds.push_back({bud_id(node.id, slot), kind, alive, alive, alive, points, !alive});
    };
    vine.buds.reserve(vine.nodes.size() + 64);
    for (std::size_t row = 0; row < vine.nodes.size(); ++row) {
        const Node& node = vine.nodes[row];
        if (row < old_nodes) {
            for (std::uint32_t slot = 0; slot < latent[row]; ++slot) add(node, slot, BudKind::latent, Points::up, true);
        } else if (index_of(node.id) == 0) {
            for (std::uint32_t slot = 0; slot < static_cast<std::uint32_t>(base_buds); ++slot)
                add(node, slot, BudKind::crown, slot % 2 == 0 ? Points::outward : Points::inward, true);
        } else {
            add(node, 0, BudKind::node, buds[row - old_nodes].points, buds[row - old_nodes].alive);
        }
    }
    std::uint32_t bud = 0;
    for (Node& node : vine.nodes) {
        node.first_bud = bud;
        while (bud < vine.buds.size() && node_of(vine.buds[bud].id) == node.id) ++bud;
        node.bud_count = bud - node.first_bud;
    }
}

} // namespace spurwright::growth
