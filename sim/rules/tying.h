// Tie the end tight and the rest loose, and put no tie over a bud.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: wraps 0 to 1.5.
inline constexpr std::array tying_claims{
    Claim{&sources::vineworks_tying, "one wrap and one tie at the end", 1.0, 1.0, "count"},
    Claim{&sources::umn_2025, "annual canes may be wrapped once; permanent wrapping girdles", 0.0, 1.0, "count"},
    says(sources::jones_2012, "end tie just before the last bud"),
    says(sources::coolclimate, "Pruning: check ties before buds swell"),
};

PerMille mark_tying(const CaneFacts& cane, const HouseRules& house);
Said say_tying(const CaneFacts& cane, const HouseRules& house);
// A cane whose outer skin cracked lives: a remark.
Said say_skin_crack(const CaneFacts& cane);
extern const Rule tying;

}  // namespace spurwright::rules
