// Where the spur and its first bud point. A house's choice: off, and without weight, unless a house turns it on; a spur
// that stands out into the alley is told in any case.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: one school wants the first bud down or outward, other crews want spurs up (memory).
inline constexpr std::array spur_direction_claims{
    says(sources::monviti_guyot, "first bud down or outward, in the line of the row, one on each side"),
    says(sources::prieure_roch, "pruning films: spurs in the line of the row"),
    says(sources::coolclimate, "on cordons: spurs upright, a fist apart"),
    says(sources::mclaren_2013, "in competition: spurs up, evenly spaced"),
};

PerMille mark_spur_direction(const SpurFacts& spur, const HouseRules& house);
Said say_spur_direction(const SpurFacts& spur, const HouseRules& house);
bool stands_across(const SpurFacts& spur, const HouseRules& house);
extern const Rule spur_direction;

}  // namespace spurwright::rules
