// The cuts a plan made, and how the pieces it left end: read from the rows that pruning added.
#pragma once

#include <span>
#include <vector>

#include "sim/rules/clearing.h"
#include "sim/rules/facts.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// Of an axis whose crown still stands: its outermost node, the wood past it, and whether a cut of this winter ends it.
PieceEnd end_of_piece(const Vine& after, const Axis& axis);

// The ties of this winter on a laid cane kept out to `last_node`.
TyingFacts tying_of(const Vine& after, const HouseRules& house, const Axis& cane, int half_wraps,
                    std::uint32_t last_node);

// Of a cane cut off: wood left past its parent's surface; 0 where it went with its parent.
Length wood_left_at_origin(const Vine& before, const Vine& after, const Axis& axis);

// Every cut that `after` has and `before` has not, in the order made.
std::vector<CutFacts> measure_cuts(const Vine& before, const Vine& after, const HouseRules& house,
                                   std::span<const DueCut> due);

}  // namespace spurwright::rules
