// Canes left standing: a kicker until spring frost is over, as insurance; a spare until the laid canes are tied, since
// canes break. Two rules: that the kicker is kept, and that nothing is forgotten. Neither counts in the bud load.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: one or two; taken off after frost, or soon after budburst where it is meant to draw vigour.
inline constexpr std::array kicker_kept_claims{
    says(sources::vineworks_frost,
         "keep a further cane upright and uncut, remove it once frost has passed and the laid canes are sound"),
    Claim{&sources::jones_2012, "upright beside four tied", 2.0, 2.0, "count"},
};
// They differ: some growers keep extra canes for vigour or for more fruit.
inline constexpr std::array kicker_absent_claims{
    says(sources::pwv_2009, "kicker canes kept on purpose"),
};

PerMille mark_kicker_kept(const StandingFacts& standing, const HouseRules& house);
Said say_kicker_kept(const StandingFacts& standing, const HouseRules& house);
extern const Rule kicker_kept;

PerMille mark_kicker_absent(const StandingFacts& standing, const HouseRules& house);
Said say_kicker_absent(const StandingFacts& standing, const HouseRules& house);
extern const Rule kicker_absent;

}  // namespace spurwright::rules
