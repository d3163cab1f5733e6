#include "sim/growth/thickening.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/cordon_pruner.h"
#include "sim/growth/laws.h"
#include "sim/growth/trunks.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// A short arm of the head that bears no more than pruned arms do follows its load at once: our choice.
constexpr std::uint32_t short_arm_nodes = 3;
constexpr int pruned_load = 20; // canes

void widen(Node& node, double by_mm) {
    const Length more{rounded(1000.0 * by_mm)};
    node.major += more;
    node.minor += more;
}

void lay_on(NextVine& next, const Axis& cane, const Constants& c) {
    const double base = in_mm(mean_diameter(next.vine.nodes[cane.first_node + (cane.node_count > 1 ? 1 : 0)]));
    for (std::uint32_t i = 0; i < cane.node_count; ++i) {
        Node& node = next.vine.nodes[cane.first_node + i];
        const double d = in_mm(mean_diameter(node));
        widen(node, std::max(0.0, laid_diameter(c, d, base) - d));
    }
}

double area_of(const Node& node) { return static_cast<double>(node.major.count) * node.minor.count; }

std::int32_t scaled_up(Length l, double by) { return static_cast<std::int32_t>(std::ceil(l.count * by)); }

} // namespace

void add_rings(NextVine& next, const Constants& c) {
    Vine& v = next.vine;
    const NodeId fork = fork_of(v);
    for (std::size_t row = 0; row < next.old_axes; ++row) {
        const Axis& axis = v.axes[row];
        if (axis.state == AxisState::dead) continue;
        if (was_laid_last_winter(v, axis)) {
            lay_on(next, axis, c);
            continue;
        }
        const double share = v.system != System::cordon ? c.arm_ring_share
                             : is_cordon_arm(v, axis)   ? c.cordon_ring_share
                                                        : c.cordon_spur_ring_share;
        const double ring = ring_width(c, age(v, axis)) * (is_trunk(axis) ? 1.0 : share);
        Length to_end;
        for (std::uint32_t i = axis.node_count; i-- > 0;) {
            Node& node = v.nodes[axis.first_node + i];
            // Two trunks above their fork share what one grows (half the section each).
            const double of_two = fork && is_trunk(axis) && node.id > fork ? c.two_trunks_ring_share : 1.0;
            widen(node,
                  2 * ring * of_two * (is_trunk(axis) && in_mm(to_end) < c.head_zone_mm ? c.head_ring_factor : 1.0));
            to_end += node.joint;
        }
    }
}

void hold_area_rule(NextVine& next, const Constants& c) {
    Vine& v = next.vine;
    std::vector<double> borne(v.nodes.size(), 0.0);
    std::vector<int> canes_on(v.nodes.size(), 0); // of this season, on all that stands there
    const NodeId fork = fork_of(v);
    for (std::size_t row = v.axes.size(); row-- > 0;) {
        const Axis& axis = v.axes[row];
        const bool perennial = is_trunk(axis) || age(v, axis) >= 3;
        double beyond = 0; // sections borne further out
        int crowd = next.is_old(row) || next.is_old(row_of(v, *v.find(axis_of(axis.parent)))) ? 0 : -1; // no side shoots
        crowd += !next.is_old(row);
        for (std::uint32_t i = axis.node_count; i-- > 0;) {
            Node& node = v.nodes[axis.first_node + i];
            const double need = borne[axis.first_node + i] + (perennial ? beyond : 0.0);
            const double area = area_of(node);
            if (need > area && next.is_old(row)) {
                double by = std::sqrt(need / area);
                const bool pruned_arm = axis.node_count <= short_arm_nodes && crowd + canes_on[axis.first_node + i] <= pruned_load;
                if (!pruned_arm && !is_trunk(axis))
                    by = std::max(std::min(by, 1.0 + 2 * c.area_ring_most_mm / in_mm(mean_diameter(node))), std::sqrt(borne[axis.first_node + i] / area));
                node.major = {scaled_up(node.major, by)};
                node.minor = {scaled_up(node.minor, by)};
            }
            beyond = need;
            crowd += canes_on[axis.first_node + i];
        }
        const NodeId on = fork && axis.id == second_trunk ? fork : axis.parent;
        if (!on || axis.state != AxisState::live) continue;
        const auto at = static_cast<std::size_t>(v.find(on) - v.nodes.data());
        borne[at] += area_of(v.nodes[axis.first_node]);
        canes_on[at] += crowd;
    }
}

void mark_dead_wood(NextVine& next) {
    Vine& v = next.vine;
    std::vector<bool> lives(v.axes.size(), false);
    for (std::size_t row = v.axes.size(); row-- > 0;) {
        Axis& axis = v.axes[row];
        bool live = lives[row] || !next.is_old(row) || is_trunk(axis);
        for (std::uint32_t i = 0; !live && i < axis.node_count; ++i) live = next.latent[axis.first_node + i] > 0;
        live = live && axis.state == AxisState::live;
        if (!live)
            axis.state = AxisState::dead;
        else if (axis.parent)
            lives[row_of(v, *v.find(axis_of(axis.parent)))] = true;
    }
}

} // namespace spurwright::growth
