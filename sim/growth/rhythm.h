// What a shoot bears along its nodes besides buds: tendrils in their rhythm, bunch stems in the first tendril places,
// marks of harm. Written on the rows of an axis that stands.
#pragma once

#include "sim/growth/next_vine.h"
#include "sim/growth/posture.h"

namespace spurwright::growth {

// Place in the tendril rhythm of node `index` (1 on the first leaf) above `bare` nodes without: 1, 2, 0 and again, so
// that two nodes of three bear one [weinplus-tendrils, louarn-2007]; continuous (labruscana): always 1. 0: none.
int tendril_class(int index, int bare, bool continuous = false);

// Tendrils, bunch stems and harm of the axis in the last row of `next`.
void dress(NextVine& next, const Push& push, const Trellis& trellis, const SeasonSettings& settings,
           const Draws& draws);

} // namespace spurwright::growth
