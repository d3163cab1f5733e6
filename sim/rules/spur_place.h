// Keep the spur lower and closer to the head than its cane: the cane laid to its own side.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// No disagreement on the order; only one work gives the height.
inline constexpr std::array spur_place_claims{
    Claim{&sources::vineworks_spec, "the specification: spurs below the wire", 100.0, 250.0, "mm"},
    says(sources::zabadal_2002, "below and more central"),
    says(sources::oenopedia_sap, "next year the upper cane becomes the fruiting cane, the lower the new spur"),
    // Of cordons. How far a spur may climb no source says: our choice.
    Claim{&sources::klodd_2022, "a spur every 3 to 5 inches along the cordon", 76.0, 127.0, "mm"},
    Claim{&sources::ncsu_handbook, "spurs 3 to 8 inches apart, two buds", 76.0, 203.0, "mm"},
    Claim{&sources::neilsperry, "spurs 4 to 6 inches apart, two buds", 102.0, 152.0, "mm"},
    says(sources::westover_2016, "a hand's width between spur positions"),
    says(sources::oxford_2006, "of two canes at a position the lower becomes the new spur, against climbing"),
    says(sources::cooksplace_2013, "keep the healthier, thicker, usually the lower of two canes at a position"),
};

// The smallest of three: its height, its order in height and in distance against its cane. Without a cane: its height.
PerMille mark_spur_place(const SpurPlaceFacts& place, const HouseRules& house);
// On a cordon: how far from the next spur inward, how far climbed, and whether a lower good cane stood at its place. A wide
// gap with nothing to fill it is no fault.
PerMille mark_row_place(const RowPlaceFacts& place, const HouseRules& house);
Said say_row_place(const RowPlaceFacts& place, AxisId spur, const HouseRules& house);
Said say_spur_place(const SpurPlaceFacts& place, AxisId spur, const HouseRules& house);
extern const Rule spur_place;

}  // namespace spurwright::rules
