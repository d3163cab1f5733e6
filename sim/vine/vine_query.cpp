#include "sim/vine/vine_query.h"

#include <algorithm>
#include <cmath>

#include "sim/core/check.h"
#include "sim/core/numeric.h"

namespace spurwright {

BearingMap::BearingMap(const Vine& vine) : start_(vine.axes.size() + 1, 0), children_(vine.axes.size()), parent_(vine.axes.size()) {
    const auto count = static_cast<std::uint32_t>(vine.axes.size());
    for (std::uint32_t row = 0; row < count; ++row) {
        const Axis* parent = vine.axes[row].parent ? vine.find(axis_of(vine.axes[row].parent)) : nullptr;
        parent_[row] = parent ? row_of(vine, *parent) : row;
        if (parent) ++start_[parent_[row] + 1];
    }
    for (std::uint32_t row = 0; row < count; ++row) start_[row + 1] += start_[row];
    std::vector<std::uint32_t> next(start_.begin(), start_.end() - 1);
    for (std::uint32_t row = 0; row < count; ++row)
        if (parent_[row] != row) children_[next[parent_[row]]++] = row;
    const auto inner_first = [&](std::uint32_t a, std::uint32_t b) { return vine.axes[a].parent < vine.axes[b].parent; };
    for (std::uint32_t row = 0; row < count; ++row) {
        const auto first = children_.begin() + start_[row], last = children_.begin() + start_[row + 1];
        if (!std::is_sorted(first, last, inner_first)) std::stable_sort(first, last, inner_first);
    }
}

std::uint32_t row_of(const Vine& vine, const Axis& axis) { return static_cast<std::uint32_t>(&axis - vine.axes.data()); }

int age(const Vine& vine, const Axis& axis) { return vine.winter - axis.born + 1; }
bool is_trunk(const Axis& axis) { return !axis.parent; }

bool is_lateral(const Vine& vine, const Axis& axis) {
    if (age(vine, axis) != 1 || is_trunk(axis)) return false;
    return vine.find(axis_of(axis.parent))->born == axis.born;
}

bool is_cane(const Vine& vine, const Axis& axis) { return age(vine, axis) == 1 && !is_trunk(axis) && !is_lateral(vine, axis); }

bool on_rootstock(const Vine& vine, const Axis& axis) {
    if (!vine.graft) return false;
    const Axis* a = &axis;
    while (a->parent) {
        const NodeId on = a->parent;
        if (axis_of(on) == axis_of(vine.graft)) return index_of(on) < index_of(vine.graft);
        a = vine.find(axis_of(on));
    }
    return false;
}

bool is_sucker(const Vine& vine, const Axis& axis, const CountingHabits& habits) {
    if (!is_cane(vine, axis)) return false;
    if (on_rootstock(vine, axis)) return true;
    const Axis* parent = vine.find(axis_of(axis.parent));
    if (!is_trunk(*parent)) return false;
    const auto nodes = vine.nodes_of(*parent);
    Length below;
    for (std::uint32_t i = index_of(axis.parent) + 1; i < nodes.size(); ++i) below += nodes[i].joint;
    return below > habits.sucker_zone;
}

bool is_water_shoot(const Vine& vine, const Axis& axis) {
    if (!is_cane(vine, axis)) return false;
    const Axis* parent = vine.find(axis_of(axis.parent));
    return age(vine, *parent) >= 3 || index_of(axis.parent) == 0;
}

bool is_double(const Vine& vine, const Axis& axis) {
    if (!is_cane(vine, axis) || index_of(axis.parent) == 0 || is_trunk(*vine.find(axis_of(axis.parent)))) return false;
    if (age(vine, *vine.find(axis_of(axis.parent))) != 2) return false;
    return std::count_if(vine.axes.begin(), vine.axes.end(),
                         [&](const Axis& a) { return a.parent == axis.parent && a.born == axis.born; }) > 1;
}

namespace {
const Laid* laid_row(const Vine& vine, AxisId id) {
    const auto it = std::lower_bound(vine.laid.begin(), vine.laid.end(), id, [](const Laid& l, AxisId wanted) { return l.axis < wanted; });
    return it != vine.laid.end() && it->axis == id ? &*it : nullptr;
}
}  // namespace

bool was_laid_last_winter(const Vine& vine, const Axis& axis) {
    const Laid* laid = laid_row(vine, axis.id);
    return age(vine, axis) == 2 && !is_trunk(axis) && laid && laid->winter == vine.winter - 1;
}

bool was_spur_last_winter(const Vine& vine, const Axis& axis) {
    return age(vine, axis) == 2 && !is_trunk(axis) && !laid_row(vine, axis.id) && axis.node_count <= 4;
}

bool is_count_bud(const Vine& vine, const Axis& axis, const Node& node, const CountingHabits& habits) {
    if (age(vine, axis) != 1 || index_of(node.id) == 0 || node.joint < habits.clear_joint) return false;
    for (const Bud& bud : vine.buds_of(node))
        if (bud.kind == BudKind::node) return !bud.harmed;
    return false;
}

int count_buds(const Vine& vine, const Axis& axis, const CountingHabits& habits, std::uint32_t last_index) {
    int count = 0;
    for (const Node& node : vine.nodes_of(axis)) {
        if (node.removed || index_of(node.id) > last_index) break;
        count += is_count_bud(vine, axis, node, habits);
    }
    return count;
}

Length along(const Vine& vine, const Axis& axis, std::uint32_t index) {
    const auto nodes = vine.nodes_of(axis);
    Length sum;
    for (std::uint32_t i = 1; i <= index && i < nodes.size(); ++i) sum += nodes[i].joint;
    return sum;
}

std::vector<std::uint32_t> ripe_count_nodes(const Vine& vine, const Axis& axis, const CountingHabits& habits) {
    std::vector<std::uint32_t> indices;
    Length at;
    for (const Node& node : vine.nodes_of(axis)) {
        if (index_of(node.id) > 0) at += node.joint;
        if (node.removed || at > axis.ripe) break;
        if (is_count_bud(vine, axis, node, habits)) indices.push_back(index_of(node.id));
    }
    return indices;
}

Length distance_to_head(const Vine& vine, NodeId from, Side side) {
    Length sum;
    NodeId at = from;
    const Axis* axis = vine.find(axis_of(at));
    while (axis->parent) {
        const auto nodes = vine.nodes_of(*axis);
        for (std::uint32_t i = 0; i <= index_of(at); ++i) sum += nodes[i].joint;  // joint 0 is the collar
        at = axis->parent;
        axis = vine.find(axis_of(at));
    }
    const NodeId crown = vine.crown(side);
    const auto nodes = vine.nodes_of(*axis);
    // On another trunk than its crown point's: along its own trunk to that trunk's top.
    const std::uint32_t goal = axis_of(crown) == axis->id ? index_of(crown) : static_cast<std::uint32_t>(nodes.size() - 1);
    for (std::uint32_t i = std::min(goal, index_of(at)) + 1; i <= std::max(goal, index_of(at)); ++i) sum += nodes[i].joint;
    return sum;
}

Length distance_to_head(const Vine& vine, const Axis& cane) { return distance_to_head(vine, cane.parent, cane.side); }

std::optional<Length> creep(const Vine& vine, const Axis& cane) {
    const auto origin = vine.origin(cane.side);
    if (!origin) return std::nullopt;
    return distance_to_head(vine, cane) - *origin;
}

Length fruiting_wire_height(const Vine& vine) {
    for (const Wire& wire : vine.wires)
        if (wire.kind == WireKind::fruiting) return wire.height;
    return {};
}

Length below_wire(const Vine& vine, const Axis& axis) { return fruiting_wire_height(vine) - vine.nodes_of(axis)[0].place.y; }

Length mean_diameter(const Node& node) { return {(node.major.count + node.minor.count) / 2}; }

Length thickness(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    if (nodes.size() <= 2) return mean_diameter(nodes[nodes.size() - 1]);
    std::int64_t sum = 0;
    std::int32_t joints = 0;
    for (std::uint32_t i = 2; i <= 3 && i < nodes.size(); ++i, ++joints) sum += nodes[i].major.count + nodes[i].minor.count;
    return {static_cast<std::int32_t>(sum / (2 * std::max(joints, 1)))};
}

Length mean_internode(const Vine& vine, const Axis& axis, const CountingHabits& habits) {
    const auto nodes = vine.nodes_of(axis);
    std::int64_t sum = 0;
    std::int32_t joints = 0;
    bool started = false;
    Length at;
    for (std::uint32_t i = 1; i < nodes.size() && !nodes[i].removed; ++i) {
        at += nodes[i].joint;
        if (at > axis.ripe) break;
        if (started) {
            sum += nodes[i].joint.count;
            ++joints;
        } else {
            started = is_count_bud(vine, axis, nodes[i], habits);
        }
    }
    return {joints ? static_cast<std::int32_t>(sum / joints) : 0};
}

Angle base_azimuth(const Vine& vine, const Axis& axis, Side side) {
    const auto nodes = vine.nodes_of(axis);
    const Place& from = nodes[0].place;
    const Place& to = nodes[std::min<std::size_t>(2, nodes.size() - 1)].place;
    const double x = sign_of(side) * (to.x.count - from.x.count), z = to.z.count - from.z.count;
    if (x == 0.0 && z == 0.0) return {};
    return from_deg(numeric::degrees(std::fabs(numeric::atan2(z, x))));
}

Length first_joint_diameter(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    return mean_diameter(nodes[nodes.size() > 1 ? 1 : 0]);
}

Length end_diameter(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    Length at, diameter = mean_diameter(nodes[0]);
    for (std::uint32_t i = 1; i < nodes.size() && !nodes[i].removed; ++i) {
        at += nodes[i].joint;
        if (at > axis.ripe) break;
        diameter = mean_diameter(nodes[i]);
    }
    return diameter;
}

std::vector<AxisId> cane_candidates(const Vine& vine, const CountingHabits& habits, int least) {
    std::vector<AxisId> found;
    for (const Axis& axis : vine.axes)
        if (!axis.removed && axis.state == AxisState::live && is_cane(vine, axis) &&
            static_cast<int>(ripe_count_nodes(vine, axis, habits).size()) >= least)
            found.push_back(axis.id);
    return found;
}

}  // namespace spurwright
