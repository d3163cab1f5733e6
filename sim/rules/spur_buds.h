// Two good buds make a spur; the base bud does not count.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: 1 or 2; none recommends 3 for renewal.
inline constexpr std::array spur_buds_claims{
    Claim{&sources::hellman_2019, "renewal spur buds", 1.0, 2.0, "count"},
    Claim{&sources::bourgogne_cane, "glossary: spur of 2 buds", 2.0, 2.0, "count"},
    Claim{&sources::oxford_2006, "entry cane pruning: 2-bud spurs", 2.0, 2.0, "count"},
    says(sources::epee_2022, "abstract: 3-bud spurs have more blind nodes than 1- and 2-bud ones"),
};

PerMille mark_spur_buds(const SpurFacts& spur, const HouseRules& house);
Said say_spur_buds(const SpurFacts& spur, const HouseRules& house);
extern const Rule spur_buds;

}  // namespace spurwright::rules
