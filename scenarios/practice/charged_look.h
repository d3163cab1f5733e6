// To which choice each loss of a look back goes: the act that made it unavoidable, what can still be mended, the hand, or
// the vine itself, whose best plan loses as much. Must not know: sentences.
#pragma once

#include <vector>

#include "scenarios/ahead/acts_ahead.h"
#include "scenarios/practice/plan_search.h"
#include "sim/planning/charged_caps.h"

namespace spurwright::practice {

struct ChargedLook {
    Plan plan;                                  // whose acts are charged
    planning::Charges charges;
    std::vector<planning::CordonChoice> better; // of a cordon, beside charges.edits
    std::vector<planning::FindingShares> shares; // beside the judgement's findings
    std::vector<planning::ChargedCap> caps;      // beside its limits
    std::vector<ahead::TwoWays> ways;            // to be lived through, so that next season can be told
    std::optional<ahead::ActsAhead> seasons;     // what came of them; none before a worker has lived them
    bool seasons_due = true;                     // nobody lives them yet
    // The charge of one act; null where it cost nothing.
    const planning::Charge* of_act(std::size_t edit) const;
    // The row that was open before it; null on a vine of canes.
    const planning::CordonChoice* row_before(std::size_t edit) const;
};

// `plan` is legal on `before`; `mine` is its judgement and `plans` what was found for the same vine and house: not none.
ChargedLook charged_look(const Vine& before, const rules::HouseRules& house, const PlansFound& plans, const Plan& plan,
                         const rules::Judgement& mine);

}  // namespace spurwright::practice
