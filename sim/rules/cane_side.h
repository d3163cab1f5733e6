// Take the cane that already points its own way along the row: the commonest break is a cane bent back over the head or
// out of the alley.
#pragma once

#include "sim/rules/say.h"

namespace spurwright::rules {

// No work gives a number: our choice. Why: a 10 mm cane turned through a quarter circle of 120 mm radius is strained
// 4.2 % in its outer skin (arithmetic: d / 2R).
PerMille mark_cane_side(const CaneFacts& cane, const HouseRules& house);
Said say_cane_side(const CaneFacts& cane, const HouseRules& house);
extern const Rule cane_side;

}  // namespace spurwright::rules
