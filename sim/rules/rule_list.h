// Every rule, by hand, in the order on screen and in records.
#pragma once

#include <array>

#include "sim/rules/rule.h"

namespace spurwright::rules {

extern const std::array<const Rule*, rule_count> all_rules;
inline const Rule& rule_of(RuleName name) { return *all_rules[index_of(name)]; }

}  // namespace spurwright::rules
