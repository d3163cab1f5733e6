// Count every bud you leave, on the canes and on the spurs: count buds against the vine's target and its space.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: 13, 15 or up to 20 a metre. Most speak of shoots; of ten buds about nine burst (memory), so 12-17 buds
// are 11-15 shoots.
inline constexpr std::array bud_load_claims{
    Claim{&sources::wineskills_shape, "shoots a metre", 15.0, 15.0, "per_m"},
    Claim{&sources::sabrosia_2011, "shoot thinning, 12 Nov 2011: shoots a metre", 15.0, 15.0, "per_m"},
    Claim{&sources::sabbatini, "shoots a metre", 15.0, 15.0, "per_m"},
    Claim{&sources::smart_2013, "p 69: shoots a metre, at most", 13.1, 15.0, "per_m"},
    Claim{&sources::smith_2023, "Table 1: 4-6 buds a foot", 13.1, 19.7, "per_m"},
    Claim{&sources::houseofvines, "5 shoots a foot in the end", 16.4, 16.4, "per_m"},
    Claim{&sources::horticulture_ppp, "yield example, buds a metre", 15.0, 15.0, "per_m"},
    Claim{&sources::naylor_nz, "36-40 buds on 1.8 m, low vigour", 20.0, 22.2, "per_m"},
    says(sources::zabadal_2002, "when in doubt leave too few rather than too many"),
    says(sources::home_98905, "spur buds counted"),
};

// Too few: only the buds of one laid cane and one spur a side count; too many: every count bud left does.
// Of a number of buds by the target alone.
PerMille mark_against_target(int n, Length spacing, const HouseRules& house);
PerMille mark_bud_load(const LoadFacts& load, const HouseRules& house);
// The same once all that is too much came off.
PerMille mark_bud_load_cleared(const LoadFacts& load, const HouseRules& house);
Said say_bud_load(const LoadFacts& load, const HouseRules& house);
extern const Rule bud_load;

}  // namespace spurwright::rules
