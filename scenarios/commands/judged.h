// A plan judged beside everything the vine offers: what `judge` and the first job both show.
#pragma once

#include <optional>

#include "scenarios/commands/verb.h"
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

// Refuses a plan for another system: one that lays a cane on a cordon, or a second one on a vine of a single cane where
// the first lies whole. `after` is `before` pruned by it.
[[nodiscard]] Result<void> is_for_this_system(const Vine& before, const Plan& plan, const Vine& after);

// Of a cordon, whose choices are rows of spurs; `plan` lays nothing.
[[nodiscard]] Result<Judged> judged_cordon(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                                           const std::optional<rules::Report>& report = std::nullopt);

// --pass first: the first pass of double pruning, on a formed cordon. False where nothing is asked.
[[nodiscard]] Result<bool> first_pass_asked(const Asked& asked, const Vine& vine);
VerbOption pass_option();
// Beside the plan that leaves every cane within the band; plans are not counted, since stubs may end anywhere.
[[nodiscard]] Result<Judged> judged_first_pass(const Vine& before, const Plan& plan, const rules::HouseRules& house);

// `before` must be uncut this winter and of a system that is judged: refused otherwise, with `subject` as the place.
[[nodiscard]] Result<Judged> judged(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                                    const planning::Planning& planning,
                                    const std::optional<rules::Report>& report = std::nullopt);
[[nodiscard]] Result<void> can_be_judged(const Vine& vine, const std::string& subject);

} // namespace spurwright::commands
