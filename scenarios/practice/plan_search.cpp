#include "scenarios/practice/plan_search.h"

namespace spurwright::practice {

PlansFound search_plans(const Vine& vine, const rules::HouseRules& house) {
    PlansFound found;
    const auto planning = std::make_shared<planning::Planning>(vine, house);
    found.planning = planning;
    for (planning::BestPlan& plan : planning->top(as_good_listed)) {
        if (!found.as_good.empty() && plan.points + as_good_within < found.best().points) break;
        found.as_good.push_back(std::move(plan));
    }
    if (!found.none()) found.as_good_count = planning->at_least(found.best().points - as_good_within);
    return found;
}

}  // namespace spurwright::practice
