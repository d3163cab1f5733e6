// Where winter killed buds, leave more of them, by the rule given. Its number is bud-load's target: without a weight of its
// own it carries the sentence. Dead primaries cannot be seen from outside, so count buds are counted, dead or not.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: from 15 or 20 % on; adding the share killed, or dividing by what lives; up to 50 or 80 %.
inline constexpr std::array bud_kill_adjust_claims{
    Claim{&sources::cornell_nny_2014, "from this share killed on add the same share of buds", 0.2, 0.8, "share"},
    Claim{&sources::purdue_double, "from this share killed on leave 35 % more", 0.15, 0.35, "share"},
    says(sources::zabadal_2002, "add canes for the share lost, 20-50 %"),
};

// The house's target is raised: by the share killed, from the house's limit on.
bool adjusts_for_bud_kill(const HouseRules& house);

PerMille mark_bud_kill_adjust(const LoadFacts& load, const HouseRules& house);
Said say_bud_kill_adjust(const LoadFacts& load, const HouseRules& house);
extern const Rule bud_kill_adjust;

}  // namespace spurwright::rules
