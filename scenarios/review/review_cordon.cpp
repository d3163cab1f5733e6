// The look back on a cordon: as on canes, with rows of spurs for choices.
#include <algorithm>

#include "scenarios/review/review.h"
#include "sim/core/check.h"
#include "sim/planning/cordon_groups.h"
#include "sim/planning/eye_noise.h"
#include "sim/vine/vine_query.h"

namespace spurwright::review {
namespace {

using planning::CordonChoice;
using planning::SpurKept;

NodeId last_node_of(const Vine& before, const rules::HouseRules& house, const SpurKept& spur) {
    const auto nodes = ripe_count_nodes(before, *before.find(spur.axis), house.habits());
    return node_id(spur.axis, nodes[static_cast<std::size_t>(spur.buds) - 1]);
}

// Every spur of either row, outward as the arm bears them.
std::vector<TwinPiece> row_twins(const Vine& before, const rules::HouseRules& house, const planning::CordonTables& tables,
                                 const CordonChoice& mine, const CordonChoice& best) {
    std::vector<TwinPiece> twins;
    const auto end_in = [&](const std::vector<SpurKept>& row, AxisId axis) {
        for (const SpurKept& spur : row)
            if (spur.axis == axis) return last_node_of(before, house, spur);
        return NodeId{};
    };
    for (const Side side : both_sides)
        for (const auto& cane : tables.arms[planning::at(side)].canes) {
            const TwinPiece twin{side, true, end_in(mine[planning::at(side)], cane.axis),
                                 end_in(best[planning::at(side)], cane.axis)};
            if (twin.mine || twin.best) twins.push_back(twin);
        }
    return twins;
}

// Each kept spur's best other length, where it alone changes the points for the better.
std::vector<planning::WhatIf> better_lengths(const Vine& before, const rules::HouseRules& house, const Plan& plan,
                                             const CordonChoice& mine, Tenths points) {
    std::vector<planning::WhatIf> found;
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    for (const auto& row : mine)
        for (const SpurKept& spur : row) {
            const auto nodes = ripe_count_nodes(before, *before.find(spur.axis), house.habits());
            std::optional<planning::WhatIf> best;
            for (std::size_t n = 1; n <= std::min<std::size_t>(planning::most_spur_buds, nodes.size()); ++n) {
                if (n == static_cast<std::size_t>(spur.buds)) continue;
                const NodeId last = node_id(spur.axis, nodes[n - 1]);
                const auto moved = planning::with_cut_moved(before, house, plan, last);
                const auto after = moved ? prune(before, *moved) : failure(moved.error());
                if (!after) continue;
                const Tenths then = rules::judge(before, *after, house, offers, asked).points;
                if (then > points && (!best || then > best->points)) best = planning::WhatIf{last, then, then - points};
            }
            if (best) found.push_back(*best);
        }
    return found;
}

} // namespace

Review review_of_cordon(const Vine& before, const Plan& plan, const io::HouseRulesFile& file) {
    const rules::HouseRules& house = file.rules;
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    const planning::CordonTables tables = planning::cordon_tables(before, house);
    const planning::BestCordon best = planning::best_of_cordon(before, house);
    const auto pruned = prune(before, plan), careful = prune(before, best.plan);
    SPURWRIGHT_CHECK((pruned.has_value() && careful.has_value()), ==, true);
    Review found;
    found.plan = plan;
    found.after = *pruned;
    rules::PlanFacts facts = rules::measure_plan(before, found.after, house, offers);
    rules::note_order(facts, plan);
    found.mine = rules::judge_plan(before, plan, found.after, house, offers, asked);
    found.best = rules::judge(before, *careful, house, offers, asked);
    found.best_plan = {{}, best.plan, best.points, best.sum};
    found.charged_caps = planning::charged_caps(before, house, plan, found.mine, found.best.caps);
    found.tally = planning::tally(tables, found.mine.points.count);
    found.within = house.acceptable.within;
    found.noise = planning::eye_noise(before, house, best.plan);
    const planning::Tally good = planning::tally(tables, found.least().count);
    found.as_good_count = good.better + good.equal;
    planning::CordonCharges charges = planning::charges_of_cordon(before, house, tables, plan, found.mine);
    found.seasons = ahead::acts_ahead(before, house, ahead::two_ways(before, house, charges), ahead::usual_wish(before));
    found.charges = std::move(charges.charges);
    RowReview row{best.choice, std::move(charges.kept), {}, std::move(charges.better), std::move(charges.left),
                  std::move(charges.meant)};
    for (const planning::CordonGroup& group : planning::cordon_groups(tables, found.least().count, most_plans_as_good)) {
        row.as_good.push_back(planning::choice_of(tables, group.best));
        found.plans_as_good.push_back({{},
                                       planning::complete(before, house, row.as_good.back()),
                                       {planning::points_of(tables, group.best)},
                                       {planning::sum_of(tables, group.best)}});
    }
    found.mistakes = planning::plan_mistakes(before, facts, offers, asked, house, found.charges, {}, found.mine, found.best);
    found.twins = row_twins(before, house, tables, row.mine, row.best);
    found.ends = better_lengths(before, house, plan, row.mine, found.mine.points);
    found.row = std::move(row);
    return found;
}

} // namespace spurwright::review
