#include "sim/vine/vine.h"

#include <algorithm>

namespace spurwright {

const Axis* Vine::find(AxisId id) const {
    // Last summer's axes are the newest ids without a hole: most look-ups hit at their distance from the last row.
    if (!axes.empty() && id <= axes.back().id) {
        const std::uint32_t from_last = axes.back().id.value - id.value;
        if (from_last < axes.size() && axes[axes.size() - 1 - from_last].id == id) return &axes[axes.size() - 1 - from_last];
    }
    const auto it = std::lower_bound(axes.begin(), axes.end(), id, [](const Axis& axis, AxisId wanted) { return axis.id < wanted; });
    return it != axes.end() && it->id == id ? &*it : nullptr;
}

const Node* Vine::find(NodeId id) const {
    const Axis* axis = find(axis_of(id));
    return axis && index_of(id) < axis->node_count ? &nodes[axis->first_node + index_of(id)] : nullptr;
}

const Bud* Vine::find(BudId id) const {
    const Node* node = find(node_of(id));
    if (!node) return nullptr;
    for (const Bud& bud : buds_of(*node))
        if (bud.id == id) return &bud;
    return nullptr;
}

}  // namespace spurwright
