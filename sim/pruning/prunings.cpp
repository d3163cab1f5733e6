#include "sim/pruning/prunings.h"

#include <algorithm>

#include "sim/core/numeric.h"
#include "sim/pruning/legal_edits.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

// mg of a cylinder of elliptic section: 1 g/cm3 is 1 mg/mm3.
double cylinder_mg(const Node& section, double length_mm) {
    return density_fresh * numeric::pi / 4 * in_mm(section.major) * in_mm(section.minor) * length_mm;
}

// What is left of a joint or a collar beyond a cut of this winter, mg.
double stub_mg(const Vine& vine, const Axis& axis, NodeId on, const Node& section) {
    std::optional<Length> left;
    for (const Wound& wound : vine.wounds)
        if (wound.winter == vine.winter && wound.axis == axis.id && wound.node == on && (!left || wound.beyond < *left)) left = wound.beyond;
    return left ? cylinder_mg(section, in_mm(*left)) : 0.0;
}

double kept_mg(const Vine& vine, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    if (nodes[0].removed) {
        const Node* parent = axis.parent ? vine.find(axis.parent) : nullptr;
        return parent && !parent->removed ? stub_mg(vine, axis, axis.parent, nodes[0]) : 0.0;
    }
    double mass = 0;
    for (std::uint32_t i = 0; i < nodes.size(); ++i) {
        if (nodes[i].removed) return mass + stub_mg(vine, axis, nodes[i - 1].id, nodes[i]);
        mass += joint_mass_mg(nodes[i]);
    }
    return mass + cylinder_mg(nodes.back(), in_mm(wood_beyond(vine, axis, static_cast<std::uint32_t>(nodes.size() - 1))));
}

Masses kept(const Vine& vine) {
    Masses masses;
    for (const Axis& axis : vine.axes) (age(vine, axis) == 1 ? masses.one_year_mg : masses.older_mg) += kept_mg(vine, axis);
    return masses;
}

}  // namespace

double joint_mass_mg(const Node& node) { return cylinder_mg(node, in_mm(node.joint)); }

double standing_mass_mg(const Vine& vine, const Axis& axis) { return kept_mg(vine, axis); }

double tip_mass_mg(const Vine& vine, const Axis& axis) {
    const auto last = axis.node_count - 1;
    return cylinder_mg(vine.nodes_of(axis).back(), std::max(0.0, in_mm(axis.ripe - along(vine, axis, last))));
}

Prunings prunings(const Vine& before, const Vine& after) {
    Prunings p;
    p.before = kept(before);
    p.kept = kept(after);
    p.removed = {p.before.one_year_mg - p.kept.one_year_mg, p.before.older_mg - p.kept.older_mg};
    for (std::size_t row = 0; row < before.axes.size(); ++row) {
        const Axis& axis = before.axes[row];
        if (age(before, axis) != 1) continue;
        for (std::uint32_t i = 1; i < axis.node_count; ++i) {
            if (before.nodes[axis.first_node + i].removed) break;
            ++p.one_year_nodes;
            p.one_year_nodes_removed += after.nodes[axis.first_node + i].removed;
        }
    }
    return p;
}

}  // namespace spurwright
