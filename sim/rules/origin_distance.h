// Take the cane near the head, or the arm grows longer every year. Measured along the wood to the crown point of the
// side the cane grows on; a house may measure the creep beyond last winter's origin instead. Both are always shown.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// No work gives a distance; they differ on cutting back into the head each winter or letting short arms lengthen.
inline constexpr std::array origin_distance_claims{
    says(sources::hellman_2019, "close to the head, else arms creep and a gap opens over it"),
    says(sources::zabadal_2002, "a well placed cane farther out where none is near, the central ones as spurs"),
    says(sources::oenopedia_sap, "best is the upper cane of last year's renewal spur"),
};

// Of a base: where a cane or a spur arises.
PerMille mark_origin_distance(Length distance_to_head, std::optional<Length> creep, const HouseRules& house);
Said say_origin_distance(const CaneFacts& cane, const HouseRules& house);
// The other measure beside it, always: a remark.
Said say_creep(const CaneFacts& cane);
extern const Rule origin_distance;

}  // namespace spurwright::rules
