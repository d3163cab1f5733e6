// Why a piece is cut away: what it is, by the vine's tables and the rules, and what is chosen in its place.
// Must not know: sentences, points.
#pragma once

#include "scenarios/practice/watched_acts.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::practice {

// `kept`: the plan's own pieces by side. Never empty; `cut` takes off all or the outer part of wood that is not kept.
std::vector<Reason> why_off(const Vine& start, const rules::HouseRules& house, const std::array<rules::SidePieces, 2>& kept, const Cut& cut);

}  // namespace spurwright::practice
