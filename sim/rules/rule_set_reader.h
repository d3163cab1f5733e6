// The text that a rule set's hash is over, read back: a record keeps it, so that a vine is judged years later by the
// rules it was judged by.
#pragma once

#include <optional>
#include <string_view>

#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// rule_set_text(result) == text. Nothing where a line is unknown, missing, twice there or has no value of its kind: a
// set of other parameters is no set of this program.
std::optional<HouseRules> read_rule_set(std::string_view text);

}  // namespace spurwright::rules
