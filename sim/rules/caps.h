// Faults so grave that no sum outweighs them: the total is held under the lowest limit that applies.
#pragma once

#include "sim/rules/asked.h"
#include "sim/rules/findings.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::rules {

// The classes of plans a careful search may still make, by their limit; the others only hands can.
inline constexpr std::string_view cap_overloaded = "overloaded", cap_side_bare = "side-bare",
                                  cap_rootstock = "rootstock-laid", cap_trunk_sucker = "trunk-sucker-laid";

std::vector<Cap> caps_of(const PlanFacts& plan, const Asked& asked, const HouseRules& house);

}  // namespace spurwright::rules
