// Edit lists that are legal one after another, drawn by address: for properties that hold for whatever hands may do.
#pragma once

#include "sim/pruning/plan.h"

namespace spurwright::test {

// At most `count` edits, places in whole tenths of a millimetre, so that the plan's text holds them exactly.
Plan random_edits(const Vine& vine, std::uint64_t seed, int count);

}  // namespace spurwright::test
