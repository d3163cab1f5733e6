// Plans of one vine carried out and judged, with what the vine asks for worked out once. And picks at random.
#pragma once

#include <optional>
#include <string>

#include "sim/core/random.h"
#include "sim/planning/complete.h"
#include "sim/planning/vine_tables.h"
#include "sim/rules/judge.h"

namespace spurwright::test {

struct Judged {
    const Vine& vine;
    const rules::HouseRules house;
    const rules::Offers offers = rules::offers(vine, house);
    const rules::Asked asked = rules::asked(offers, house);

    // Nothing where the plan is not legal.
    std::optional<rules::Judgement> operator()(const Plan& plan) const {
        const auto after = prune(vine, plan);
        if (!after) return std::nullopt;
        if (!house.prunings_weighed.asked) return rules::judge_plan(vine, plan, *after, house, offers, asked);
        // Weighed as it should be.
        const Mass bundle = rules::measure_plan(vine, *after, house, offers).weighing.bundle;
        return rules::judge_plan(vine, plan, *after, house, offers, asked, rules::Report{bundle, true});
    }
};

// Whether the judge gives the full plan of this pick what the tables say, sum and points.
bool agrees(const planning::VineTables& tables, const Judged& judged, const planning::Pick& pick);
// Where they part, for whoever has to mend it.
std::string difference(const planning::VineTables& tables, const Judged& judged, const planning::Pick& pick);

// A choice at random: each row as likely as `none`. Nothing where 1,000 draws gave none.
std::optional<planning::Pick> random_pick(const planning::Tables& tables, std::uint64_t seed);

// A full plan gone wrong: an edit forgotten, something done after the end, a cut moved, or every cut a little.
Plan spoilt(const Vine& vine, Plan plan, std::uint64_t seed);

}  // namespace spurwright::test
