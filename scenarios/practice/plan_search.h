// What the vine offers, found apart from the vine on screen so that a worker can do it: the best plan, those as good,
// and where any number of points stands. Pure: any thread, own copies.
#pragma once

#include <memory>
#include <vector>

#include "sim/planning/cordon.h"
#include "sim/planning/planning.h"

namespace spurwright::practice {

inline constexpr std::size_t as_good_listed = 20;

struct PlansFound {
    std::shared_ptr<const planning::Planning> planning;  // of a vine of canes; counts any points
    std::shared_ptr<const planning::CordonTables> rows;  // of a cordon, in its place
    Tenths tolerance{};                                  // points under the best that are as good (planning/eye_noise.h)
    std::vector<planning::BestPlan> as_good;             // the best first, within the tolerance, at most as_good_listed
    std::uint64_t as_good_count = 0;                     // exact
    bool none() const { return as_good.empty(); }        // the vine offers no plan
    const planning::BestPlan& best() const { return as_good.front(); }
    planning::Tally tally(Tenths points) const;          // where they stand among all ways
};

// `vine` is uncut this winter; of a vine that begins with acts made, what is still open after them. Of a cordon the plans
// listed are the best of each set of canes.
PlansFound search_plans(const Vine& vine, const rules::HouseRules& house, const Plan& begun = {});

}  // namespace spurwright::practice
