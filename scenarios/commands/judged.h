// A plan judged beside everything the vine offers: what `judge` and the first job both show.
#pragma once

#include <optional>

#include "scenarios/commands/vine_source.h"
#include "sim/planning/planning.h"
#include "sim/rules/judge.h"

namespace spurwright::commands {

struct Judged {
    Plan plan;
    rules::Judgement judgement;
    planning::Tally tally;
    std::optional<Tenths> best; // none: the vine offers no plan
};

// `before` must be uncut this winter and of a system that is judged: refused otherwise, with `subject` as the place.
[[nodiscard]] Result<Judged> judged(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                                    const planning::Planning& planning,
                                    const std::optional<rules::Report>& report = std::nullopt);
[[nodiscard]] Result<void> can_be_judged(const Vine& vine, const std::string& subject);

} // namespace spurwright::commands
