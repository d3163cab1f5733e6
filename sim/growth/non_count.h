// Shoots of base buds, of the head's latent buds and of the stem (step G4): how many, and from where.
#pragma once

#include <vector>

#include "sim/growth/next_vine.h"
#include "sim/growth/push.h"
#include "sim/growth/season.h"

namespace spurwright::growth {

// Adds to `pushes` the base and head shoots, `mean` of them, and the suckers. `rings`: the canes and spurs kept last
// winter, as rows of any vine, whose base buds may push.
void push_non_count(std::vector<Push>& pushes, const NextVine& next, const std::vector<const Axis*>& rings, double mean,
                    const SeasonSettings& settings, const PushDraws& draws, SeasonNotes& notes);

} // namespace spurwright::growth
