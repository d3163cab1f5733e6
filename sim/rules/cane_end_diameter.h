// A fruiting cane is cut where it is still nearly pencil thick, even if it then ends short.
#pragma once

#include "sim/rules/say.h"

namespace spurwright::rules {

// No work gives a number for the end: our choice. It decides the length before the neighbour does.
PerMille mark_cane_end_diameter(const CaneFacts& cane, const HouseRules& house);
Said say_cane_end_diameter(const CaneFacts& cane, const HouseRules& house);
extern const Rule cane_end_diameter;

}  // namespace spurwright::rules
