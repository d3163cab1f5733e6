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

// Of a cordon, whose choices are rows of spurs.
[[nodiscard]] Result<Judged> judged_cordon(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                                           const std::optional<rules::Report>& report = std::nullopt);

// `before` must be uncut this winter and of a system that is judged: refused otherwise, with `subject` as the place.
[[nodiscard]] Result<Judged> judged(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                                    const planning::Planning& planning,
                                    const std::optional<rules::Report>& report = std::nullopt);
[[nodiscard]] Result<void> can_be_judged(const Vine& vine, const std::string& subject);
// The same for what knows canes alone: a cordon is refused.
[[nodiscard]] Result<void> can_be_judged_by_canes(const Vine& vine, const std::string& subject);

} // namespace spurwright::commands
