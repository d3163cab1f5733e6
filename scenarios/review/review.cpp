#include "scenarios/review/review.h"

#include "sim/core/check.h"
#include "sim/planning/eye_noise.h"
#include "sim/planning/open_choices.h"
#include "sim/vine/vine_query.h"

namespace spurwright::review {
namespace {

Vine carried_out(const Vine& before, const Plan& plan) {
    auto after = prune(before, plan);
    SPURWRIGHT_CHECK(after.has_value(), ==, true);
    return *std::move(after);
}

NodeId end_of_spur(const Vine& before, const rules::HouseRules& house, AxisId spur, int buds) {
    if (!spur || buds < 1) return {};
    const auto nodes = ripe_count_nodes(before, *before.find(spur), house.habits());
    return node_id(spur, nodes[static_cast<std::size_t>(buds) - 1]);
}

std::vector<TwinPiece> twin_pieces(const Vine& before, const rules::HouseRules& house, const planning::Choice& mine,
                                   const planning::Choice& best) {
    const auto spur = [&](AxisId axis, int buds) { return end_of_spur(before, house, axis, buds); };
    return {{Side::left, false, mine.left_cane, best.left_cane},
            {Side::right, false, mine.right_cane, best.right_cane},
            {Side::left, true, spur(mine.left_spur, mine.left_buds), spur(best.left_spur, best.left_buds)},
            {Side::right, true, spur(mine.right_spur, mine.right_buds), spur(best.right_spur, best.right_buds)}};
}

// Whether these points are within tolerance under that set.
bool as_good_under(const Vine& before, const Vine& after, const rules::HouseRules& house) {
    const auto best = planning::Planning(before, house).best();
    return best && rules::judge(before, after, house).points + planning::tolerance(before, house, best->plan) >= best->points;
}

} // namespace

Review review(const Vine& before, const Plan& plan, const io::HouseRulesFile& file, const planning::Planning& planning,
              const io::Assets& assets) {
    const rules::HouseRules& house = file.rules;
    Review found;
    found.plan = plan;
    found.after = carried_out(before, plan);
    const rules::Offers offers = rules::offers(before, house);
    const rules::Asked asked = rules::asked(offers, house);
    rules::PlanFacts facts = rules::measure_plan(before, found.after, house, offers);
    rules::note_order(facts, plan);
    found.mine = rules::judge_plan(before, plan, found.after, house, offers, asked);
    found.best_plan = *planning.best();
    found.best = rules::judge(before, carried_out(before, found.best_plan.plan), house, offers, asked);
    found.tally = planning.count(found.mine.points);
    found.within = house.acceptable.within;
    found.noise = planning::eye_noise(before, house, found.best_plan.plan);
    found.as_good_count = planning.at_least(found.least());
    for (planning::BestPlan& good : planning.top(most_plans_as_good))
        if (good.points >= found.least()) found.plans_as_good.push_back(std::move(good));
    found.charges = planning::charges(before, house, planning, plan, found.mine);
    found.seasons = ahead::acts_ahead(before, house, ahead::two_ways(before, house, found.charges), ahead::usual_wish(before));
    found.charged_caps = planning::charged_caps(before, house, plan, found.mine, found.best.caps);
    found.mistakes = planning::plan_mistakes(before, facts, offers, asked, house, found.charges, found.best_plan.choice,
                                             found.mine, found.best);
    found.twins = twin_pieces(before, house, planning::kept_choice(before, facts, house), found.best_plan.choice);
    // Shortening good canes is no answer to unwanted ones that still stand.
    if (facts.load.all == facts.load.counted()) found.ends = planning::better_ends(before, house, plan);
    if (!found.as_good())
        for (const std::string_view name : io::house_ways) {
            const auto other = io::load_house_rules(std::string(name), assets);
            if (other && rules::rule_set_hash(other->rules) != rules::rule_set_hash(house) &&
                as_good_under(before, found.after, other->rules))
                found.other_houses.emplace_back(name);
        }
    return found;
}

} // namespace spurwright::review
