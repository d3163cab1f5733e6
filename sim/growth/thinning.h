// S1: thinning and suckering, when the shoots are a hand long and before they compete.
#pragma once

#include <vector>

#include "sim/growth/next_vine.h"
#include "sim/growth/push.h"
#include "sim/growth/season.h"

namespace spurwright::growth {

// Takes off doubles, unwanted non-count shoots and suckers, each with its chance; with thinning off only counts. Needs
// the pushes by node; keeps their order.
void thin(std::vector<Push>& pushes, const NextVine& next, const SeasonSettings& settings, const PushDraws& draws,
          SeasonNotes& notes);

} // namespace spurwright::growth
