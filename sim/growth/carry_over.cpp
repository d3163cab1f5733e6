// From the pruned vine to the old wood of the next season.
#include <algorithm>

#include "sim/growth/next_vine.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/course_book.h"
#include "sim/vine/neighbours_wood.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr std::uint8_t most_latent = 4; // slots of a node

class CarryOver {
public:
    explicit CarryOver(const Vine& pruned) : from_(pruned) {
        for (const Wound& wound : pruned.wounds)
            if (wound.winter == pruned.winter) cuts_.push_back(&wound);
    }

    NextVine carried() {
        find_what_stays();
        head_line();
        copy_wood();
        pass_stub_buds();
        copy_marks();
        return std::move(next_);
    }

private:
    void head_line() {
        const Vine& f = from_;
        Vine& v = next_.vine;
        v.recipe = f.recipe;
        v.seed = f.seed;
        v.system = f.system;
        v.variety = f.variety;
        v.winter = f.winter + 1;
        v.spacing = f.spacing;
        v.row_spacing = f.row_spacing;
        v.vigour = f.vigour;
        v.frost = f.frost;
        v.graft = f.graft ? standing_trunk_node(f.graft) : f.graft;
        v.head = standing_trunk_node(f.head);
        v.crown_left = standing_trunk_node(f.crown_left);
        v.crown_right = standing_trunk_node(f.crown_right);
        v.capacity = f.capacity;
        v.reserves = f.reserves;
        v.wires = f.wires;
        v.neighbours = f.neighbours;
        for (const Laid& laid : f.laid) {
            const Axis* cane = f.find(laid.axis);
            if (laid.winter != f.winter || cane->removed) continue;
            auto& origin = laid.side == Side::right ? v.origin_right : v.origin_left;
            origin = distance_to_head(f, cane->parent, cane->side);
        }
    }

    // Where the trunk itself was cut, its highest node left.
    NodeId standing_trunk_node(NodeId node) const {
        const Axis& trunk = *from_.find(axis_of(node));
        return node_id(trunk.id, std::min(index_of(node), std::max(1u, standing_[row_of(from_, trunk)]) - 1));
    }

    std::uint32_t standing(const Axis& axis) const {
        if (axis.removed) return 0;
        std::uint32_t count = 0;
        while (count < axis.node_count && !from_.nodes[axis.first_node + count].removed) ++count;
        return count;
    }

    // Trunks stay; a ring that bears nothing is overgrown; all else that was not cut stays. The neighbour's own pruner
    // takes what hangs over.
    void find_what_stays() {
        const std::size_t rows = from_.axes.size();
        standing_.assign(rows, 0);
        stays_.assign(rows, false);
        for (std::size_t row = rows; row-- > 0;) {
            const Axis& axis = from_.axes[row];
            standing_[row] = standing(axis);
            next_.highest_id = std::max(next_.highest_id, axis.id.value);
            if (standing_[row] == 0 || is_neighbours(from_, axis)) continue;
            if (!axis.parent || standing_[row] > 1) stays_[row] = true;
            if (stays_[row] && axis.parent) stays_[row_of(from_, *from_.find(axis_of(axis.parent)))] = true;
        }
    }

    void copy_wood() {
        Vine& v = next_.vine;
        v.courses = std::make_shared<CourseBook>();
        double removed_mg = 0;
        for (std::size_t row = 0; row < from_.axes.size(); ++row) {
            const Axis& axis = from_.axes[row];
            if (axis.born == from_.winter) removed_mg += one_year_removed(axis, standing_[row]);
            if (!stays_[row]) continue;
            Axis kept = axis;
            kept.mark = Role::none;
            kept.first_node = static_cast<std::uint32_t>(v.nodes.size());
            kept.node_count = standing_[row];
            const Length stub = cut_at(axis, standing_[row] - 1, kept);
            kept.ripe = along(from_, axis, standing_[row] - 1) + stub;
            v.axes.push_back(kept);
            for (std::uint32_t i = 0; i < kept.node_count; ++i) copy_node(from_.nodes[axis.first_node + i]);
        }
        next_.old_axes = v.axes.size();
        next_.old_nodes = v.nodes.size();
        v.last_prunings = from_g(removed_mg / 1000.0);
    }

    // Wood beyond the last node that stands; marks the end where a cut made it.
    Length cut_at(const Axis& axis, std::uint32_t last, Axis& kept) const {
        const NodeId node = from_.nodes[axis.first_node + last].id;
        const Wound* cut = nullptr;
        for (const Wound* wound : cuts_)
            if (wound->axis == axis.id && wound->node == node && (!cut || wound->beyond < cut->beyond)) cut = wound;
        if (cut)
            kept.end = AxisEnd::cut;
        else if (last + 1 < axis.node_count)
            kept.end = AxisEnd::broken;
        if (cut) return cut->beyond;
        if (last + 1 < axis.node_count) return {};
        return std::max(Length{}, axis.ripe - along(from_, axis, last));
    }

    double one_year_removed(const Axis& axis, std::uint32_t standing_nodes) const {
        double mg = 0;
        for (std::uint32_t i = standing_nodes; i < axis.node_count; ++i)
            mg += joint_mass_mg(from_.nodes[axis.first_node + i]);
        if (standing_nodes < axis.node_count) mg += tip_mass_mg(from_, axis);
        return mg;
    }

    void copy_node(const Node& node) {
        Node kept = node;
        kept.tendril = Tendril::none;
        kept.bunch = Bunch::none;
        if (kept.lateral == Lateral::axis) kept.lateral = Lateral::scar;
        std::uint8_t buds = 0;
        for (const Bud& bud : from_.buds_of(node))
            if (bud.kind != BudKind::node && bud.primary && buds < most_latent) ++buds;
        next_.vine.nodes.push_back(kept);
        next_.latent.push_back(buds);
    }

    // The nearest node inward that stays, or none where the wood itself was cut off.
    NodeId carried_node(NodeId node) const {
        while (node) {
            const Axis& axis = *from_.find(axis_of(node));
            const std::uint32_t row = row_of(from_, axis);
            if (index_of(node) >= standing_[row]) return {};
            if (stays_[row]) return node;
            node = axis.parent;
        }
        return {};
    }

    void pass_stub_buds() {
        for (std::size_t row = 0; row < from_.axes.size(); ++row) {
            if (stays_[row] || standing_[row] == 0) continue;
            const Axis& axis = from_.axes[row];
            const NodeId onto = carried_node(axis.parent);
            if (!onto) continue;
            std::uint8_t& latent = next_.latent_at(onto);
            for (const Bud& bud : from_.buds_of(from_.nodes[axis.first_node]))
                if (bud.primary && latent < most_latent) ++latent;
        }
    }

    void copy_marks() {
        Vine& v = next_.vine;
        for (Wound wound : from_.wounds) {
            const NodeId on = carried_node(wound.node);
            if (!on) continue;
            if (on != wound.node) wound.beyond += from_.nodes_of(*from_.find(axis_of(wound.node)))[0].joint;
            wound.node = on;
            v.wounds.push_back(wound);
        }
        for (Laid laid : from_.laid) {
            const Axis* axis = v.find(laid.axis);
            if (!axis) continue;
            if (!v.find(laid.worst)) laid.worst = node_id(laid.axis, axis->node_count - 1);
            v.laid.push_back(laid);
        }
        for (Tie tie : from_.ties) {
            if (tie.state == TieState::cut || !v.find(tie.node)) continue;
            tie.state = TieState::sunk;
            v.ties.push_back(tie);
        }
    }

    const Vine& from_;
    NextVine next_;
    std::vector<const Wound*> cuts_;
    std::vector<std::uint32_t> standing_;
    std::vector<bool> stays_;
};

} // namespace

NextVine carry_over(const Vine& pruned) { return CarryOver(pruned).carried(); }

} // namespace spurwright::growth
