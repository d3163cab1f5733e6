// What a rule asks, as one band to print: the number range of full marks and the outer one of part marks. Where a rule
// asks more than one number (tool-choice, tying) it is the one that its finding shows.
#pragma once

#include "sim/rules/findings.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

struct Threshold {
    Unit unit = Unit::none;
    std::optional<Wanted> full, half;  // in thousandths of the unit; none: no range
};
Threshold threshold_of(RuleName name, const HouseRules& house);

}  // namespace spurwright::rules
