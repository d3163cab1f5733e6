// Wood that stands among a vine's own and is not its own: a neighbour's cane that hangs over.
#pragma once

#include "sim/vine/vine.h"

namespace spurwright {

// Last summer's wood on nothing of this vine: an axis without a parent that bears neither the head nor a crown point.
bool is_neighbours(const Vine& vine, const Axis& axis);

} // namespace spurwright
