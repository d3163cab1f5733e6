// The laterals that are still there in winter: summer shoots of this season's canes, along them and bunched under the
// hedge's cut (S2, S3).
#pragma once

#include "sim/growth/next_vine.h"
#include "sim/growth/posture.h"

namespace spurwright::growth {

// `first_cane` is the row of the first new axis: all from there on bear laterals. `ranks` holds the way of rank +1 at
// every new node. A node keeps a scar where its lateral was taken off or has dropped; with `notes` those are weighed too.
void grow_laterals(NextVine& next, std::size_t first_cane, const std::vector<Point3>& ranks, const Trellis& trellis,
                   const SeasonSettings& settings, const Draws& draws, SeasonNotes* notes = nullptr);

} // namespace spurwright::growth
