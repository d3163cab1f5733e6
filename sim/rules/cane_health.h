// Keep only firm brown wood with sound buds and no spots or wounds: the kept part of a cane.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// No disagreement; the share of ripe wood and what one missing bud costs are our choice.
inline constexpr std::array cane_health_claims{
    says(sources::hellman_2019,
         "list of desirable fruiting cane characteristics: firm, brown, healthy buds, no wound or disease"),
    says(sources::wineskills_factors,
         "canes to reject: grey rot, mildew or Phomopsis spotting, poor ripening, twinning"),
};

PerMille mark_cane_health(const CaneFacts& cane, const HouseRules& house);
Said say_cane_health(const CaneFacts& cane, const HouseRules& house);
extern const Rule cane_health;

}  // namespace spurwright::rules
