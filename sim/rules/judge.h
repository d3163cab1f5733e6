// What a pruning is worth and why. Pure: facts in, findings out. Never asks what the best plan is.
#pragma once

#include "sim/rules/findings.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::rules {

// `after` must be `before` pruned (the same rows). Judged for two canes with a spur each (system two-cane),
// or for one cane with one spur on whichever side (one-cane).
Judgement judge(const Vine& before, const Vine& after, const HouseRules& house);
// The same with what the vine asks for worked out before: it is a fact of `before`, so many plans share it.
Judgement judge(const Vine& before, const Vine& after, const HouseRules& house, const Offers& offers,
                const Asked& asked);

// A plan as it was made: `after` is `before` pruned by it, so that the order of acts is known too; and what was weighed.
Judgement judge_plan(const Vine& before, const Plan& plan, const Vine& after, const HouseRules& house, const Offers& offers,
                     const Asked& asked, const std::optional<Report>& report = std::nullopt);

// From facts alone, measured or written down by hand.
Judgement judge_facts(const PlanFacts& plan, const Asked& asked, const HouseRules& house);

// Why a vine cannot be judged yet (a system other than these), or nothing.
std::optional<TextKey> why_not_judged(const Vine& vine);

// 100.0 held under the lowest of these.
Tenths held_under(const std::vector<Cap>& caps, Tenths sum);

}  // namespace spurwright::rules
