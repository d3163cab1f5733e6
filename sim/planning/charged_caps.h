// Which act broke the plan: each limit goes to the first act since which it has stood to the end. A side is bare from the
// beginning, so that is no act's before the last good piece of it is gone; last winter's cane left on and too many buds are
// never an act's: that is work left undone. Must not know: sentences.
#pragma once

#include "sim/planning/charged_findings.h"

namespace spurwright::planning {

struct ChargedCap {
    LostTo to{};           // vine: the best plan is held by it too; open: left undone
    std::size_t edit = 0;  // of an act: into the plan, from 0
    Tenths taken;          // of the sum, beyond what the limits before it took: the vine's first, then acts in order
    bool operator==(const ChargedCap&) const = default;
};

// One for each limit of `mine`, beside them; what they took sums to what all limits took. `of_best`: those of the best plan.
std::vector<ChargedCap> charged_caps(const Vine& before, const rules::HouseRules& house, const Plan& plan,
                                     const rules::Judgement& mine, const std::vector<rules::Cap>& of_best);

}  // namespace spurwright::planning
