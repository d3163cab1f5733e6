// The best rows of a cordon in their exact order, as top_plans.h lists the plans of canes. Of each arm the best rows for
// every number of buds are listed only as far as they are asked for, each from the rows that begin one spur farther out;
// the two arms' lists meet in order. Must not know: vines.
#pragma once

#include "sim/planning/cordon.h"

namespace spurwright::planning {

// As ranks_above() has it, the best first; fewer where there are fewer picks.
std::vector<CordonRanked> top_picks(const CordonTables& tables, std::size_t wanted);

}  // namespace spurwright::planning
