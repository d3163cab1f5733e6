// Never run past your neighbour; on a weak vine stop short and leave the gap.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: meet, 100 mm, a hand's width.
inline constexpr std::array cane_reach_claims{
    Claim{&sources::naylor_nz, "interview: gap between cane ends", 100.0, 100.0, "mm"},
    says(sources::westover_2016, "pp 28-29: a hand's width between cane ends"),
    Claim{&sources::vinsanity_2013, "canes meet in the middle", 0.0, 0.0, "mm"},
    says(sources::todaro_tying, "no bare gap over the head"),
};

// Of the wood out to the last count bud, with the usual end beyond it or what was left. An overlap is always a fault. A
// gap is one only where the load is short and ripe wood for more was there.
PerMille mark_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load);
Said say_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load);
extern const Rule cane_reach;

}  // namespace spurwright::rules
