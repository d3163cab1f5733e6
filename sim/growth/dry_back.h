// Wood dries back from a cut in old wood about as deep as the cut is thick. A stub as long takes it; from a flush cut it
// goes on into the live side, where latent buds die and now and then what stands beside the cut.
#pragma once

#include "sim/growth/growth_constants.h"
#include "sim/growth/next_vine.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {

// After the cuts of the winter before this season, on the old wood of `next`: dead buds go, axes that die are marked
// dead. Wounds of one-year wood dry back within its own joint.
void dry_back(NextVine& next, const Constants& constants, const Draws& draws);

} // namespace spurwright::growth
