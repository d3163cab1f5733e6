// Even spacing along the cane makes an even row of shoots. A remark: it carries no points unless a house gives it some.
#pragma once

#include "sim/rules/say.h"

namespace spurwright::rules {

// No work gives a number: our choice.
PerMille mark_internode_evenness(const CaneFacts& cane, const HouseRules& house);
Said say_internode_evenness(const CaneFacts& cane, const HouseRules& house);
extern const Rule internode_evenness;

}  // namespace spurwright::rules
