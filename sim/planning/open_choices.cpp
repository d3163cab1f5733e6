#include "sim/planning/open_choices.h"

#include <algorithm>

#include "sim/planning/complete.h"
#include "sim/pruning/legal_edits.h"
#include "sim/rules/measure_cuts.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

const Laid* laying_now(const Vine& now, AxisId axis) {
    for (const Laid& laid : now.laid)
        if (laid.axis == axis && laid.winter == now.winter) return &laid;
    return nullptr;
}

// How many of these nodes still stand; they stand from the base outward.
std::size_t standing(const Vine& now, const Axis& axis, const std::vector<std::uint32_t>& nodes) {
    const auto all = now.nodes_of(axis);
    std::size_t n = 0;
    while (n < nodes.size() && !all[nodes[n]].removed) ++n;
    return n;
}

void keep_first(Candidate& candidate, Side side, std::size_t cuts) {
    for (auto& load : candidate.cane[at(side)]) load.resize(std::min(load.size(), cuts));
}

// One edit of a full plan, carried out on a vine in hand where it is still to be done.
class Finisher {
public:
    Finisher(const Vine& before, const Vine& now, const rules::HouseRules& house)
        : before_(before), hand_(now), house_(house) {}

    void take(const Edit& edit) {
        if (done(edit) || why_not(hand_, edit) || !prune_one(hand_, edit, before_)) return;
        rest_.edits.push_back(edit);
    }
    Plan rest() && { return std::move(rest_); }

private:
    bool done(const Edit& edit) const {
        if (const auto* mark = std::get_if<Mark>(&edit)) return hand_.find(mark->axis)->mark == mark->role;
        if (const auto* lay = std::get_if<Lay>(&edit)) return laying_now(hand_, lay->cane) != nullptr;
        if (const auto* tie = std::get_if<Fasten>(&edit)) return tied_at_its_end(axis_of(tie->at));
        return cut_already(std::get<Cut>(edit));
    }

    // A place cut already is not cut again, were it a little too long: that would be one more wound.
    bool cut_already(const Cut& cut) const {
        const Axis& axis = *hand_.find(axis_of(cut.past));
        const std::uint32_t node = index_of(cut.past);
        if (axis.removed || hand_.nodes_of(axis)[node].removed) return true;
        const rules::PieceEnd end = rules::end_of_piece(hand_, axis);
        return end.cut && end.last_node <= node && cut.beyond.count >= 0;
    }

    bool tied_at_its_end(AxisId id) const {
        const Axis& axis = *hand_.find(id);
        const std::uint32_t last = rules::end_of_piece(hand_, axis).last_node;
        const Laid* laid = laying_now(hand_, id);
        return laid && rules::tying_of(hand_, house_, axis, laid->half_wraps, last).end_tie ==
                           rules::TyingFacts::EndTie::tight;
    }

    const Vine& before_;
    Vine hand_;
    const rules::HouseRules& house_;
    Plan rest_;
};

}  // namespace

Tables open_choices(const VineTables& tables, const Vine& now) {
    Tables open = tables.tables;
    for (std::size_t row = 0; row < open.candidates.size(); ++row) {
        Candidate& candidate = open.candidates[row];
        const Piece& piece = tables.pieces[row];
        const Axis& axis = *now.find(piece.axis);
        const Laid* laid = axis.removed ? nullptr : laying_now(now, piece.axis);
        const bool no_cane = axis.removed || (laid && laid->state == LaidState::snapped);
        for (const Side side : both_sides)
            keep_first(candidate, side,
                       no_cane || (laid && laid->side != side) ? 0 : standing(now, axis, piece.cut_nodes));
        const std::size_t spurs = axis.removed || laid ? 0 : standing(now, axis, piece.spur_nodes);
        candidate.spur.resize(std::min(candidate.spur.size(), spurs));
    }
    return open;
}

Choice kept_choice(const Vine& before, const rules::PlanFacts& facts, const rules::HouseRules& house) {
    Choice kept;
    const auto cane_of = [&](const rules::SidePieces& side) {
        if (!side.cane || side.cane->count_buds < 1) return NodeId{};
        const auto nodes = ripe_count_nodes(before, *before.find(side.cane->axis), house.habits());
        return node_id(side.cane->axis, nodes[static_cast<std::size_t>(side.cane->count_buds) - 1]);
    };
    kept.left_cane = cane_of(facts.sides[0]);
    kept.right_cane = cane_of(facts.sides[1]);
    if (facts.sides[0].spur) {
        kept.left_spur = facts.sides[0].spur->axis;
        kept.left_buds = facts.sides[0].spur->count_buds;
    }
    if (facts.sides[1].spur) {
        kept.right_spur = facts.sides[1].spur->axis;
        kept.right_buds = facts.sides[1].spur->count_buds;
    }
    return kept;
}

Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const Choice& choice) {
    return finish(before, now, house, complete(before, house, choice));
}

Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const CordonChoice& choice) {
    return finish(before, now, house, complete(before, house, choice));
}

Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const Plan& whole) {
    Finisher hand(before, now, house);
    for (const Edit& edit : whole.edits) hand.take(edit);
    return std::move(hand).rest();
}

}  // namespace spurwright::planning
