// Where the points of a cordon went, as charges.h tells it of canes: after each edit the best row still open is worth as
// much as before or less; what it lost is charged to that edit, the rest to the hand.
#pragma once

#include "sim/planning/charges.h"
#include "sim/planning/cordon.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::planning {

// The tables without the canes that are gone, and the others no longer than they stand; rows stay where they were. `now`
// is the vine of `tables` after some edits.
CordonTables open_rows(const CordonTables& tables, const Vine& before, const Vine& now, const rules::HouseRules& house);

// The spurs that a plan kept and that count, by side, outward.
CordonChoice kept_row(const rules::PlanFacts& facts);

// Nothing where that is no choice of these tables.
std::optional<CordonPick> pick_of(const CordonTables& tables, const CordonChoice& choice);

struct CordonCharges {
    Charges charges;                         // the choices in it are empty: they stand here
    std::vector<CordonChoice> better, left;  // what was open before and after each charged edit
    std::vector<CordonChoice> even_better;   // before each edit of charges.even
    CordonChoice kept, meant;                // by the plan; the best still open at its end
};

// `plan` is legal on `before`, an uncut cordon; `mine` is its judgement.
CordonCharges charges_of_cordon(const Vine& before, const rules::HouseRules& house, const CordonTables& tables,
                                const Plan& plan, const rules::Judgement& mine);

}  // namespace spurwright::planning
