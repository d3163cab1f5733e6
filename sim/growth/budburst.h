// Which buds push in spring, and which of their shoots are left after thinning (steps G3 to G5 and S1).
#pragma once

#include <vector>

#include "sim/growth/next_vine.h"
#include "sim/growth/push.h"
#include "sim/growth/season.h"

namespace spurwright::growth {

struct Spring {
    std::vector<Push> pushes; // by node, then nth
    double shoots = 0;        // S
};

// `next` is carry_over(pruned), whose latent buds may push as well. Needs capacity > 0.
Spring budburst(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings,
                const Draws& draws, SeasonNotes& notes);

} // namespace spurwright::growth
