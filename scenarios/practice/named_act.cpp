#include "scenarios/practice/named_act.h"

#include <array>

#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr std::array<std::string_view, 7> role_keys{"role.none", "role.left", "role.right", "role.spur", "role.kicker", "role.spare", "role.remove"};

struct Namer {
    const Vine& after;

    // On old wood: the piece that grows at the node and stays.
    AxisId standing_at(NodeId node) const {
        const Axis* borne_by = after.find(axis_of(node));
        if (!borne_by || age(after, *borne_by) < 2) return {};
        for (const Axis& axis : after.axes)
            if (axis.parent == node && !axis.removed && axis.node_count > 1 && !after.nodes_of(axis)[1].removed) return axis.id;
        return {};
    }
    NamedAct operator()(const Cut& cut) const {
        const AxisId axis = axis_of(cut.past);
        if (const AxisId kept = standing_at(cut.past)) return {{"act.cut-beyond"}, {{"part", axis}, {"kept", kept}}};
        if (index_of(cut.past) == 0) return {{"act.cut-off"}, {{"part", axis}}};
        return {{"act.cut"}, {{"part", axis}, {"node", Count{index_of(cut.past)}}}};
    }
    NamedAct operator()(const Lay& lay) const {
        return {{"act.lay"}, {{"part", lay.cane}, {"side", TextKey{lay.side == Side::right ? "side.right" : "side.left"}}}};
    }
    NamedAct operator()(const Fasten& tie) const { return {{"act.tie"}, {{"part", axis_of(tie.at)}, {"node", Count{index_of(tie.at)}}}}; }
    NamedAct operator()(const Mark& mark) const {
        if (mark.role == Role::none) return {{"act.unmark"}, {{"part", mark.axis}}};
        return {{"act.mark"}, {{"part", mark.axis}, {"role", TextKey{role_keys[static_cast<std::size_t>(mark.role)]}}}};
    }
};

}  // namespace

NamedAct named(const Edit& edit, const Vine& after) { return std::visit(Namer{after}, edit); }

}  // namespace spurwright::practice
