// One vine's line of the fingerprint: what it is, how many choices it has, its best plan. A change anywhere in growth,
// rules or planning that can move a mark moves a line. Which vines are read is for those who grow them to say.
#pragma once

#include <string>

#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"

namespace spurwright::planning {

// "<vine hash> <plans counted> <best points in tenths> <best plan>" and LF; "-" twice where there is no plan.
std::string fingerprint_line(const Vine& vine, const rules::HouseRules& house);

}  // namespace spurwright::planning
