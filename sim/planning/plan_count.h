// How many choices the tables have, and how many of them have more points than a plan, or as many, exactly and without
// listing them: for each pair of canes the spurs of both sides are counted by their worth, once; each pair of cut nodes
// is then a look-up a state.
#pragma once

#include "sim/planning/brute_force.h"
#include "sim/planning/tables.h"

namespace spurwright::planning {

std::uint64_t count_choices(const Tables& tables);

// Each pair of canes in turn: the faster way but for vines with very many canes.
Tally tally_by_pairs(const Tables& tables, int points);

// `points` in tenths. Equal to tally_by_force, always. Work: about C * C * (spurs left * spurs right + 7 * K * K).
Tally tally(const Tables& tables, int points);

// Choices with at least so many points: the plans as good as the best within a tolerance.
std::uint64_t count_at_least(const Tables& tables, int points);

}  // namespace spurwright::planning
