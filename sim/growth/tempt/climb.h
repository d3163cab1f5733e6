// A head raised as though it had climbed. Inner to sim/growth/tempt.
#pragma once

#include "sim/vine/vine.h"

namespace spurwright::growth {

// Raises the head and all it bears by so much: trunks stretch from the soil, canes rise with their bases and are cut
// again at the hedge, what lies on the wire stays there. `by` is above 0.
void raise_head(Vine& vine, Length by);

} // namespace spurwright::growth
