// A fruiting cane should be of moderate thickness and round: a little thicker than a pencil, no thicker than a marker.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: the lower limit is 6.4 or 8 mm; the upper 12.7 mm, yet fruitfulness goes on rising to 14 mm and beyond
// with a possible cost in ripening. So thick wood is judged on thickness, shape and joints together.
inline constexpr std::array cane_diameter_claims{
    Claim{&sources::hellman_2019, "list of desirable fruiting cane characteristics, item 2", 6.35, 12.7, "mm"},
    Claim{&sources::westover_2016, "pp 28-29", 7.9, 12.7, "mm"},
    Claim{&sources::winegrowers_info, "growing notes, canes to keep", 8.0, no_number, "mm"},
    Claim{&sources::extension_bull_canes, "the answer: thicker than this is a bull cane", 12.7, no_number, "mm"},
    Claim{&sources::eltom_2015, "Fig. 1, Table 1: canes studied", 7.9, 16.3, "mm"},
    says(sources::eltom_2014, "abstract: thicker canes bear more"),
    says(sources::trought_2017, "pp 56-58: 8 mm canes bear about 30 % fewer bunches a shoot than 11 mm"),
};

PerMille mark_cane_diameter(const CaneFacts& cane, const HouseRules& house);
Said say_cane_diameter(const CaneFacts& cane, const HouseRules& house);
extern const Rule cane_diameter;

}  // namespace spurwright::rules
