#include "sim/planning/first_pass_plan.h"

#include <algorithm>

#include "sim/rules/cordon_row.h"
#include "sim/rules/tool_choice.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

constexpr Length usual_stub{300'000};  // where both works agree
constexpr Length clear_of_bud{5'000};

// So far above the base, but clear of the buds: past a node or short of the next.
Cut stub_cut(const Vine& vine, const Axis& axis, Length length, const rules::HouseRules& house) {
    const auto nodes = vine.nodes_of(axis);
    std::uint32_t last = 0;
    Length along;
    while (last + 1 < nodes.size() && along + nodes[last + 1].joint <= length) along += nodes[++last].joint;
    const Node& joint = nodes[std::min<std::size_t>(last + 1, nodes.size() - 1)];
    const Length room = std::max(Length{}, joint.joint - clear_of_bud);
    const Length beyond = std::min(std::max(length - along, clear_of_bud), std::max(room, Length{joint.joint.count / 2}));
    return {node_id(axis.id, last), {beyond.count / 100 * 100}, rules::suitable_tool(joint.major, 1, house), {}};
}

}  // namespace

Plan first_pass_plan(const Vine& vine, const rules::HouseRules& house) {
    const Length length = std::clamp(usual_stub, house.first_pass.band.full.low, house.first_pass.band.full.high);
    Plan plan;
    std::vector<AxisId> canes;
    for (const auto& row : rules::cordon_row(vine, house))
        for (const rules::RowCane& cane : row) canes.push_back(cane.axis);
    std::stable_sort(canes.begin(), canes.end());
    for (const AxisId id : canes) {
        const Axis& axis = *vine.find(id);
        if (along(vine, axis, axis.node_count - 1) > house.first_pass.band.full.high)
            plan.edits.push_back(stub_cut(vine, axis, length, house));
    }
    return plan;
}

}  // namespace spurwright::planning
