// The pieces that Tab walks, in order. Must not know: the hand, screens.
#pragma once

#include <vector>

#include "sim/vine/vine.h"

namespace spurwright::practice {

// Those with something left to do first, then all others that stand; each from the near post to the far post by where
// they start, the lower first where two start together.
std::vector<AxisId> walked_pieces(const Vine& now, std::vector<AxisId> left_to_do);

// The outermost node of a piece that bears, itself or by way of others, wood whose tape says it stays: so far it must stand.
// None where it bears none.
NodeId bears_kept(const Vine& now, AxisId piece);

}  // namespace spurwright::practice
