#include "sim/vine/vine_check.h"

#include <cmath>

namespace spurwright {
namespace {

using Broken = std::optional<Error>;

Error broken(std::string_view key, std::string part) {
    return {Fault::bad_file, TextKey{key}, {{"part", std::move(part)}}, {}};
}

bool within(Length l, std::int32_t low, std::int32_t high) { return low <= l.count && l.count <= high; }

double apart(const Place& a, const Place& b) {
    const double x = a.x.count - b.x.count, y = a.y.count - b.y.count, z = a.z.count - b.z.count;
    return std::sqrt(x * x + y * y + z * z);
}

Broken check_site(const Vine& v) {
    if (v.winter < 1 || v.winter > 200) return broken("error.vine.winter", "winter");
    if (v.recipe < 0 || v.recipe > 255) return broken("error.vine.recipe", "recipe");
    if (v.seed >> 40) return broken("error.vine.seed", "seed");
    if (!within(v.spacing, 600'000, 3'750'000)) return broken("error.vine.spacing", "spacing");
    if (!within(v.row_spacing, 1'000'000, 4'100'000)) return broken("error.vine.row-spacing", "row_spacing");
    if (v.capacity < 0) return broken("error.vine.capacity", "capacity");
    if (v.reserves.count < 0 || v.reserves.count > 1000) return broken("error.vine.reserves", "reserves");
    if (v.last_prunings.count < 0 || v.last_yield.count < 0) return broken("error.vine.last-weights", "last_prunings");
    bool fruiting = false;
    for (std::size_t i = 0; i < v.wires.size(); ++i) {
        const Wire& w = v.wires[i];
        fruiting = fruiting || w.kind == WireKind::fruiting;
        if (!w.id || (i > 0 && v.wires[i - 1].id >= w.id)) return broken("error.vine.wire-order", name_of(w.id));
        if (w.height.count <= 0 || w.half_gap.count < 0 || (i > 0 && v.wires[i - 1].height > w.height))
            return broken("error.vine.wire-heights", name_of(w.id));
    }
    if (!fruiting) return broken("error.vine.no-fruiting-wire", "wires");
    return std::nullopt;
}

Broken check_axis(const Vine& v, std::size_t row) {
    const Axis& a = v.axes[row];
    const std::string name = name_of(a.id);
    if (!a.id || a.id.value > highest_axis || (row > 0 && v.axes[row - 1].id >= a.id)) return broken("error.vine.axis-order", name);
    if (a.node_count == 0) return broken("error.vine.no-crown", name);
    if (a.ripe.count < 0) return broken("error.vine.ripe", name);
    if (a.born < 1 || a.born > v.winter) return broken("error.vine.born", name);
    if (!a.parent) {
        if (a.order != 0) return broken("error.vine.order", name);
        if (a.side != Side::none) return broken("error.vine.side", name);
        return std::nullopt;
    }
    const Axis* parent = v.find(axis_of(a.parent));
    const Node* node = v.find(a.parent);
    if (!parent || !node) return broken("error.vine.parent", name);
    if (parent->id >= a.id) return broken("error.vine.parent-after", name);
    if (parent->born > a.born) return broken("error.vine.older-than-parent", name);
    if (a.order != parent->order + 1) return broken("error.vine.order", name);
    if (a.side == Side::none || (parent->side != Side::none && parent->side != a.side)) return broken("error.vine.side", name);
    if (!a.removed && (parent->removed || node->removed)) return broken("error.vine.on-removed", name);
    return std::nullopt;
}

Broken check_node(const Vine& v, std::size_t row) {
    const Node& n = v.nodes[row];
    const std::string name = name_of(n.id);
    const Axis* axis = v.find(axis_of(n.id));
    if (!axis) return broken("error.vine.node-without-axis", name);
    const std::uint32_t index = index_of(n.id);
    if (axis->first_node + index != row || index >= axis->node_count) return broken("error.vine.node-order", name);
    if (index > 0 ? n.joint.count <= 0 : n.joint.count < 0) return broken("error.vine.joint", name);
    if (!(n.major >= n.minor && n.minor.count > 0)) return broken("error.vine.diameters", name);
    if (n.rank != 1 && n.rank != -1) return broken("error.vine.rank", name);
    if (n.tendril_class < 0 || n.tendril_class > 2) return broken("error.vine.tendril-class", name);
    if (axis->removed && !n.removed) return broken("error.vine.kept-on-removed", name);
    if (index > 0) {
        const Node& below = v.nodes[row - 1];
        if (below.removed && !n.removed) return broken("error.vine.kept-on-removed", name);
        if (!n.removed && apart(n.place, below.place) > n.joint.count + 50.0) return broken("error.vine.stretched", name);
    }
    return std::nullopt;
}

Broken check_bud(const Vine& v, std::size_t row) {
    const Bud& b = v.buds[row];
    const std::string name = name_of(b.id);
    if (row > 0 && v.buds[row - 1].id >= b.id) return broken("error.vine.bud-order", name);
    const Node* node = v.find(node_of(b.id));
    if (!node) return broken("error.vine.bud-without-node", name);
    const std::uint32_t index = index_of(node->id);
    if ((b.kind == BudKind::node && index == 0) || (b.kind == BudKind::crown && index != 0)) return broken("error.vine.bud-kind", name);
    return std::nullopt;
}

// The position of a wound's or a tie's place: its node must be there.
Broken check_marks(const Vine& v) {
    for (std::size_t i = 0; i < v.wounds.size(); ++i) {
        const Wound& w = v.wounds[i];
        const std::string name = name_of(w.id);
        if (!w.id || (i > 0 && v.wounds[i - 1].id >= w.id)) return broken("error.vine.wound-order", name);
        if (!v.find(w.node) || !w.axis) return broken("error.vine.wound-place", name);
        if (!(w.major >= w.minor && w.minor.count > 0) || w.beyond.count < 0) return broken("error.vine.wound-face", name);
        if (w.wood_age < 1 || w.winter < 1 || w.winter > v.winter) return broken("error.vine.wound-time", name);
        if (w.tilt.count < -60'000 || w.tilt.count > 60'000) return broken("error.vine.wound-tilt", name);
    }
    for (std::size_t i = 0; i < v.laid.size(); ++i) {
        const Laid& l = v.laid[i];
        const std::string name = name_of(l.axis);
        if (!v.find(l.axis) || (i > 0 && v.laid[i - 1].axis >= l.axis)) return broken("error.vine.laid-order", name);
        if (l.side == Side::none || l.half_wraps < 0 || l.half_wraps > 6 || l.winter < 0 || l.winter > v.winter)
            return broken("error.vine.laid", name);
        if (!v.find(l.worst) || axis_of(l.worst) != l.axis || l.strain.count < 0) return broken("error.vine.laid", name);
    }
    for (std::size_t i = 0; i < v.ties.size(); ++i) {
        const Tie& t = v.ties[i];
        const std::string name = name_of(t.id);
        if (!t.id || (i > 0 && v.ties[i - 1].id >= t.id)) return broken("error.vine.tie-order", name);
        if (!v.find(t.node) || t.beyond.count < 0 || t.winter < 0 || t.winter > v.winter) return broken("error.vine.tie", name);
    }
    for (std::size_t i = 0; i < v.brush.size(); ++i) {
        const Brush& b = v.brush[i];
        if (!b.id || (i > 0 && v.brush[i - 1].id >= b.id) || !v.find(b.node)) return broken("error.vine.brush", name_of(b.id));
    }
    return std::nullopt;
}

// Node sums stay far below 2^31, so a distance along the wood never overflows.
Broken check_sums(const Vine& v) {
    std::int64_t sum = 0;
    for (const Node& n : v.nodes) sum += n.joint.count;
    if (sum >= std::int64_t{1} << 31) return broken("error.vine.too-long", "axes");
    return std::nullopt;
}

Broken check_head(const Vine& v) {
    const Axis* trunk = v.find(axis_of(v.head));
    if (!trunk || !v.find(v.head)) return broken("error.vine.head", "head");
    if (trunk->parent || index_of(v.head) + 1 != trunk->node_count) return broken("error.vine.head", name_of(v.head));
    for (const NodeId crown : {v.crown_left, v.crown_right}) {
        const Axis* axis = v.find(axis_of(crown));
        if (!axis || !v.find(crown) || axis->parent) return broken("error.vine.crown-point", name_of(crown));
    }
    if (v.graft) {
        const Axis* axis = v.find(axis_of(v.graft));
        if (!axis || !v.find(v.graft) || axis->parent) return broken("error.vine.graft", name_of(v.graft));
    }
    return std::nullopt;
}

}  // namespace

std::optional<Error> check_vine(const Vine& v) {
    if (auto e = check_site(v)) return e;
    if (v.axes.empty()) return broken("error.vine.no-axes", "axes");
    if (v.axes.size() > most_axes || v.nodes.size() > most_nodes) return broken("error.vine.too-many", "axes");
    if (auto e = check_sums(v)) return e;
    for (std::size_t i = 0; i < v.axes.size(); ++i)
        if (auto e = check_axis(v, i)) return e;
    for (std::size_t i = 0; i < v.nodes.size(); ++i)
        if (auto e = check_node(v, i)) return e;
    for (std::size_t i = 0; i < v.buds.size(); ++i)
        if (auto e = check_bud(v, i)) return e;
    if (auto e = check_head(v)) return e;
    return check_marks(v);
}

}  // namespace spurwright
