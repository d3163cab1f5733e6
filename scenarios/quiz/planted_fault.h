// Somebody's pruning with one mistake in it: the best plan, changed in one thing only.
#pragma once

#include <optional>

#include "scenarios/quiz/ground.h"
#include "sim/rules/judge.h"

namespace spurwright::quiz {

struct PlantedFault {
    Plan plan;
    Vine after;
    rules::Judgement judgement;
};

// By the draw: another cane, a spur too long or none, too many buds, no tie, a peg of old wood left, the wrong tool.
// Nothing where this vine's best plan has no room for it.
std::optional<PlantedFault> planted_fault(const Ground& ground, std::uint64_t seed);

}  // namespace spurwright::quiz
