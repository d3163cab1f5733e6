// Shoots become canes: each push is grown, stood up, cut at the hedge, ripened and written into the tables.
#pragma once

#include "sim/growth/next_vine.h"
#include "sim/growth/posture.h"

namespace spurwright::growth {

// Adds one axis a push, in their order, then the laterals. A shoot of which the hedge leaves no node is not written.
// With `notes` what grew and what the summer took is weighed, joint by joint as the tables would.
void grow_canes(NextVine& next, const Spring& spring, const ShootLaw& law, const SeasonSettings& settings,
                const Draws& draws, SeasonNotes* notes = nullptr);

} // namespace spurwright::growth
