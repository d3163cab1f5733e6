#include "scenarios/practice/plan_search.h"

#include "sim/planning/eye_noise.h"

namespace spurwright::practice {

PlansFound search_plans(const Vine& vine, const rules::HouseRules& house, const Plan& begun) {
    PlansFound found;
    const auto now = prune(vine, begun);
    if (!now) return found; // acts that this vine never allowed: it offers nothing
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
