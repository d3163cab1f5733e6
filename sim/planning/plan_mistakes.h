// The common mistakes of a finished plan, those among them that only the best plan can show: a good cane cut off while a
// worse one stays, a cane taken for its thickness alone.
#pragma once

#include "sim/planning/charges.h"
#include "sim/rules/mistakes.h"

namespace spurwright::planning {

// `charges` are those of this plan; `mine` and `best` the judgements of it and of the best plan.
std::vector<rules::Mistake> plan_mistakes(const Vine& before, const rules::PlanFacts& facts, const rules::Offers& offers,
                                          const rules::Asked& asked, const rules::HouseRules& house,
                                          const Charges& charges, const Choice& best_choice,
                                          const rules::Judgement& mine, const rules::Judgement& best);

}  // namespace spurwright::planning
