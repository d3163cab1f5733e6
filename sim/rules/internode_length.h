// Short, even joints put shoots where light and air can reach them: the mean joint of the part kept.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: 76-102 mm or 60-70 mm. The band covers both in the main.
inline constexpr std::array internode_length_claims{
    Claim{&sources::hellman_2019, "list of desirable fruiting cane characteristics, item 2", 76.2, 101.6, "mm"},
    Claim{&sources::wineskills_factors, "canes to choose", 60.0, 60.0, "mm"},
    Claim{&sources::sabrosia_2011, "shoot thinning, 12 Nov 2011: 60-70 gives 15 shoots a metre", 60.0, 70.0, "mm"},
    Claim{&sources::sabrosia_2011, "shoot thinning, 12 Nov 2011: tolerable", 55.0, 55.0, "mm"},
    Claim{&sources::extension_bull_canes, "the answer: joints of a bull cane", 127.0, 152.4, "mm"},
    Claim{&sources::oxford_2006, "entry internode: cuttings", 50.0, 150.0, "mm"},
    Claim{&sources::grovida_mature, "an outlier", 150.0, 150.0, "mm"},
};

PerMille mark_internode_length(const CaneFacts& cane, const HouseRules& house);
Said say_internode_length(const CaneFacts& cane, const HouseRules& house);
extern const Rule internode_length;

}  // namespace spurwright::rules
