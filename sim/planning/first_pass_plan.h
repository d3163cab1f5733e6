// The first pass of double pruning carried out with careful hands: every cane of a cordon's row cut 300 mm above its base, or
// left where it is shorter. Each cane is marked by itself, so the plan that gives each full marks is the best there is.
#pragma once

#include "sim/pruning/plan.h"
#include "sim/rules/house_rules.h"

namespace spurwright::planning {

// `vine` is an uncut cordon.
Plan first_pass_plan(const Vine& vine, const rules::HouseRules& house);

}  // namespace spurwright::planning
