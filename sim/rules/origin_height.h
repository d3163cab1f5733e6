// Canes that start below the wire bend easily and keep the head low.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ (50-200, 100-150, 100-250), and all place the origin below the wire.
inline constexpr std::array origin_height_claims{
    Claim{&sources::vineworks_spec, "the specification: spurs below the wire", 100.0, 250.0, "mm"},
    Claim{&sources::coolclimate, "Pruning: crown below the wire", 100.0, 150.0, "mm"},
    Claim{&sources::lokkelebery, "report of a training day: cane and spur both from below the lowest wire", 0.0,
          no_number, "mm"},
};

PerMille mark_origin_height(const CaneFacts& cane, const HouseRules& house);
Said say_origin_height(const CaneFacts& cane, const HouseRules& house);
extern const Rule origin_height;

}  // namespace spurwright::rules
