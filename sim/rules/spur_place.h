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
};

// The smallest of three: its height, its order in height and in distance against its cane. Without a cane: its height.
PerMille mark_spur_place(const SpurPlaceFacts& place, const HouseRules& house);
Said say_spur_place(const SpurPlaceFacts& place, AxisId spur, const HouseRules& house);
extern const Rule spur_place;

}  // namespace spurwright::rules
