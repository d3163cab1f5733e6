#include "scenarios/practice/twin.h"

namespace spurwright::practice {

Twin twin_of(const Vine& after, const Axis& axis, Side side, bool spur) {
    Twin twin{axis.id, {}, side, spur, {}};
    for (const Node& node : after.nodes_of(axis)) {
        if (node.removed) break;
        twin.places.push_back(node.place);
        twin.last = node.id;
    }
    return twin;
}

std::vector<Twin> twins_of(const Vine& before, const Plan& plan) {
    std::vector<Twin> twins;
    const auto after = prune(before, plan);
    if (!after) return twins;
    for (const Edit& edit : plan.edits) {
        if (const auto* lay = std::get_if<Lay>(&edit)) twins.push_back(twin_of(*after, *after->find(lay->cane), lay->side, false));
        const auto* mark = std::get_if<Mark>(&edit);
        if (mark && mark->role == Role::spur) twins.push_back(twin_of(*after, *after->find(mark->axis), after->find(mark->axis)->side, true));
    }
    return twins;
}

}  // namespace spurwright::practice
