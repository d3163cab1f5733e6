#include "scenarios/practice/named_act.h"

#include <array>

namespace spurwright::practice {
namespace {

constexpr std::array<std::string_view, 7> role_keys{"role.none", "role.left", "role.right", "role.spur", "role.kicker", "role.spare", "role.remove"};

struct Namer {
    NamedAct operator()(const Cut& cut) const {
        const AxisId axis = axis_of(cut.past);
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

NamedAct named(const Edit& edit) { return std::visit(Namer{}, edit); }

}  // namespace spurwright::practice
