#include "scenarios/practice/plan_search.h"

#include "sim/planning/cordon_charges.h"
#include "sim/planning/cordon_groups.h"
#include "sim/planning/eye_noise.h"

namespace spurwright::practice {
namespace {

PlansFound search_rows(const Vine& vine, const rules::HouseRules& house, const Vine& now) {
    PlansFound found;
    const auto rows = std::make_shared<planning::CordonTables>(
        planning::open_rows(planning::cordon_tables(vine, house), vine, now, house));
    found.rows = rows;
    const auto whole = [&](const planning::CordonPick& pick) {
        return planning::BestPlan{{},
                                  planning::complete(vine, house, planning::choice_of(*rows, pick)),
                                  {planning::points_of(*rows, pick)},
                                  {planning::sum_of(*rows, pick)}};
    };
    const planning::BestPlan best = whole(planning::best_pick(*rows).pick);
    found.tolerance = planning::tolerance(vine, house, best.plan);
    const int least = (best.points - found.tolerance).count;
    for (const planning::CordonGroup& group : planning::cordon_groups(*rows, least, as_good_listed))
        found.as_good.push_back(whole(group.best));
    const planning::Tally good = planning::tally(*rows, least);
    found.as_good_count = good.better + good.equal;
    return found;
}

}  // namespace

planning::Tally PlansFound::tally(Tenths points) const {
    if (rows) return planning::tally(*rows, points.count);
    return planning ? planning->count(points) : planning::Tally{};
}

PlansFound search_plans(const Vine& vine, const rules::HouseRules& house, const Plan& begun) {
    PlansFound found;
    const auto now = prune(vine, begun);
    if (!now) return found; // acts that this vine never allowed: it offers nothing
    if (vine.system == System::cordon) return search_rows(vine, house, *now);
    const auto planning = begun.edits.empty() ? std::make_shared<planning::Planning>(vine, house)
                                              : std::make_shared<planning::Planning>(vine, house, *now);
    found.planning = planning;
    std::vector<planning::BestPlan> best = planning->top(as_good_listed);
    if (best.empty()) return found;
    found.tolerance = planning::tolerance(vine, house, best.front().plan);
    const Tenths least = best.front().points - found.tolerance;
    for (planning::BestPlan& plan : best)
        if (plan.points >= least) found.as_good.push_back(std::move(plan));
    found.as_good_count = planning->at_least(least);
    return found;
}

}  // namespace spurwright::practice
