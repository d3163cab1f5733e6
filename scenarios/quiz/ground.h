// What an item is made on: one grown vine, what its house asks, and the exact search over it.
#pragma once

#include <optional>
#include <string>

#include "scenarios/quiz/item.h"
#include "sim/growth/site.h"
#include "sim/planning/planning.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::quiz {

struct Ground {
    Vine vine;  // uncut this winter
    std::string code;
    const rules::HouseRules& house;
    rules::Offers offers;
    rules::Asked asked;
    planning::Planning planning;
    planning::BestPlan best;
    Tenths tolerance;  // plans within so much of the best are as good
    std::uint64_t seed = 0;

    bool as_good(Tenths points) const { return points + tolerance >= best.points; }
};

// The site of a vine for the crew: as in practice, its age and seed by the draw.
growth::Site crew_site(std::uint64_t seed);
// Nothing where this draw's vine has no plan, or canes of one side only. `house` must outlive it.
std::optional<Ground> ground_of(std::uint64_t seed, const rules::HouseRules& house);

}  // namespace spurwright::quiz
