// What is still open on a vine that was worked on: the choices whose canes and spurs still stand, long enough, and lie
// where a cane was laid already. Worth what they were worth on the uncut vine, carried out with careful hands: what a
// hand did badly is a matter of its own, and choosing well cannot mend it.
#pragma once

#include "sim/planning/cordon.h"
#include "sim/planning/vine_tables.h"
#include "sim/pruning/plan.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::planning {

// The tables without what is gone; rows stay where they were. `now` is the vine of `tables` after some edits.
Tables open_choices(const VineTables& tables, const Vine& now);

// What a plan kept, as a choice: canes laid, cut after their last ripe count bud, and spurs. It need not lie in the space:
// a plan may lay nothing.
Choice kept_choice(const Vine& before, const rules::PlanFacts& facts, const rules::HouseRules& house);

// The edits still to be made on `now` for the full plan of a choice that is open: complete(choice) less what was done.
// Carried out after the edits that led to `now` they are legal.
Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const Choice& choice);
// Of a cordon: of a row that is open.
Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const CordonChoice& choice);
// Of a full plan as complete() makes one.
Plan finish(const Vine& before, const Vine& now, const rules::HouseRules& house, const Plan& whole);

}  // namespace spurwright::planning
