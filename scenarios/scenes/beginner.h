// A beginner's plan for the vine at hand: the history pruner's choice with the flaws of several characters together.
#pragma once

#include <vector>

#include "sim/growth/history_pruner.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_code.h"

namespace spurwright::scenes {

// The good pruner's habits with each habit a flawed character has otherwise taken from it; the last one named wins.
growth::PrunerHabits habits_together(const std::vector<Pruner>& characters);

Plan beginners_plan(const Vine& vine, const std::vector<Pruner>& characters);

} // namespace spurwright::scenes
