// The N best choices of the tables in their exact order, ties included.
#pragma once

#include "sim/planning/tables.h"

namespace spurwright::planning {

// Fewer where the tables have fewer. Work: one search's pair bounds, and for each pair and each two cut nodes that can
// still enter the list its spurs once: a few searches for a hundred plans of a grown vine.
std::vector<Ranked> top_picks(const Tables& tables, std::size_t wanted);

}  // namespace spurwright::planning
