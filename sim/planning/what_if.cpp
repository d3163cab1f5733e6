#include "sim/planning/what_if.h"

#include <algorithm>

#include "sim/planning/open_choices.h"
#include "sim/pruning/lay.h"
#include "sim/rules/measure_pieces.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

Error refused_move(std::string_view key, NodeId part) {
    return {key == "error.plan.unknown-part" ? Fault::unknown_part : Fault::not_allowed, TextKey{key}, {{"part", part}}, {}};
}

bool ends(const Edit& edit, AxisId axis) {
    const auto* cut = std::get_if<Cut>(&edit);
    return cut && axis_of(cut->past) == axis;
}

// The outermost tie of a cane is its end tie, and goes where its end goes.
NodeId outermost_tie(const Plan& plan, AxisId axis) {
    NodeId outermost;
    for (const Edit& edit : plan.edits)
        if (const auto* tie = std::get_if<Fasten>(&edit); tie && axis_of(tie->at) == axis) outermost = std::max(outermost, tie->at);
    return outermost;
}

bool tied_from(const Edit& edit, NodeId from) {
    const auto* tie = std::get_if<Fasten>(&edit);
    return tie && axis_of(tie->at) == axis_of(from) && tie->at >= from;
}

Cut end_cut_at(const Vine& before, const rules::HouseRules& house, const Axis& axis, const rules::PieceEnd& end) {
    const auto nodes = before.nodes_of(axis);
    const Node& joint = nodes[std::min<std::size_t>(end.last_node + 1, nodes.size() - 1)];
    const bool shears = joint.major <= house.tool_choice.shears_one_year;
    const bool loppers = joint.major <= house.tool_choice.loppers;
    return {node_id(axis.id, end.last_node), end.beyond, shears ? Tool::shears : loppers ? Tool::loppers : Tool::saw, {}};
}

std::optional<Tenths> points_of_plan(const Vine& before, const rules::HouseRules& house, const Plan& plan) {
    const auto after = prune(before, plan);
    if (!after) return std::nullopt;
    return rules::judge(before, *after, house).points;
}

}  // namespace

Result<Plan> with_cut_moved(const Vine& before, const rules::HouseRules& house, const Plan& plan, NodeId last) {
    const Axis* axis = before.find(axis_of(last));
    if (!axis || index_of(last) >= axis->node_count) return failure(refused_move("error.plan.unknown-part", last));
    const rules::PieceEnd end = rules::canonical_end(before, *axis, index_of(last));
    Plan moved;
    const NodeId end_tie = outermost_tie(plan, axis->id), from = std::min(end_tie, last);
    bool cut_made = !end.cut;
    std::optional<Side> laid;
    for (const Edit& edit : plan.edits) {
        const auto* lay = std::get_if<Lay>(&edit);
        if (lay && lay->cane == axis->id) laid = lay->side;
        if (ends(edit, axis->id) || (lay && !cut_made)) {  // ends are cut before anything is laid
            if (!cut_made) moved.edits.push_back(end_cut_at(before, house, *axis, end));
            cut_made = true;
        }
        if (ends(edit, axis->id)) continue;
        if (end_tie && tied_from(edit, from)) continue;
        moved.edits.push_back(edit);
    }
    if (!cut_made) moved.edits.push_back(end_cut_at(before, house, *axis, end));
    if (end_tie && laid)
        if (const auto tie = rules::canonical_tie(before, house, *axis, course_of(before, *axis, *laid), index_of(last)))
            moved.edits.push_back(*tie);
    const auto after = prune(before, moved);
    if (!after) return failure(after.error());
    const Axis& now = *after->find(axis->id);
    if (now.removed || after->nodes_of(now)[index_of(last)].removed)
        return failure(refused_move("error.what-if.gone", last));
    return moved;
}

std::vector<WhatIf> better_ends(const Vine& before, const rules::HouseRules& house, const Plan& plan) {
    std::vector<WhatIf> found;
    const auto after = prune(before, plan);
    if (!after) return found;
    const rules::Offers offers = rules::offers(before, house);
    const rules::PlanFacts facts = rules::measure_plan(before, *after, house, offers);
    const Tenths mine = rules::judge(before, *after, house).points;
    const auto try_all = [&](AxisId id, NodeId now, std::size_t fewest, std::size_t most) {
        const auto nodes = ripe_count_nodes(before, *before.find(id), house.habits());
        std::optional<WhatIf> best;
        for (std::size_t n = fewest; n <= std::min(most, nodes.size()); ++n) {
            const NodeId last = node_id(id, nodes[n - 1]);
            if (last == now) continue;
            const auto moved = with_cut_moved(before, house, plan, last);
            const auto points = moved ? points_of_plan(before, house, *moved) : std::nullopt;
            if (points && *points > mine && (!best || *points > best->points)) best = WhatIf{last, *points, *points - mine};
        }
        if (best) found.push_back(*best);
    };
    const Choice kept = kept_choice(before, facts, house);
    const auto floor = static_cast<std::size_t>(std::max(1, house.cane_count.floor_buds));
    for (const NodeId cane : {kept.left_cane, kept.right_cane})
        if (cane) try_all(axis_of(cane), cane, floor, ~std::size_t{});
    for (const auto& [spur, buds] : {std::pair{kept.left_spur, kept.left_buds}, std::pair{kept.right_spur, kept.right_buds}})
        if (spur) {
            const auto nodes = ripe_count_nodes(before, *before.find(spur), house.habits());
            try_all(spur, node_id(spur, nodes[static_cast<std::size_t>(buds) - 1]), 1, 3);
        }
    return found;
}

}  // namespace spurwright::planning
