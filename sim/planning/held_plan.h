// The best plan that goes with what somebody has decided so far: pieces taped stay what their tapes say, a cane already cut
// keeps its length, what is gone is gone. What a tape asks that no plan can do is left out of account and named.
// Must not know: whose tapes they are, steps, sentences.
#pragma once

#include "sim/planning/planning.h"

namespace spurwright::planning {

struct HeldPlan {
    BestPlan best;                 // whole, from the uncut vine, with careful hands
    Plan rest;                     // what is still to be done of it on the vine in hand: legal after the edits that led there
    std::vector<AxisId> not_held;  // taped, and no plan can keep them as taped: by id
};

// `tables` are of `before`, uncut this winter; `now` is that vine after some edits. Canes and spurs taped are all that may
// stand in their places; canes taped to stay up (kicker, spare) are left standing before others; what is taped to go is
// chosen for nothing. Nothing where no cane can be laid any more.
std::optional<HeldPlan> best_holding(const Vine& before, const rules::HouseRules& house, const VineTables& tables, const Vine& now);

}  // namespace spurwright::planning
