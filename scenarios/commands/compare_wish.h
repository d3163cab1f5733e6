// How a block is to be compared, from the options of the verbs that do.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/reference_vines/compare.h"

namespace spurwright::commands {

// --row, --from, --to, --within, --confidence, --sizes; what is not said stays as usual.
[[nodiscard]] Result<reference_vines::CompareWish> compare_wish(const Asked& asked);

} // namespace spurwright::commands
