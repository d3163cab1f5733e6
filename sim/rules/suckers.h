// Cut suckers right at their origin, so that the basal buds go too; never keep one from below the graft.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// No disagreement; how much wood still takes the basal buds off is our choice.
inline constexpr std::array suckers_claims{
    says(sources::hellman_2019, "trace suckers back and cut them off completely"),
    says(sources::marlborough_2023, "trunk renewal from a shoot above the graft"),
};

PerMille mark_suckers(const SuckerFacts& facts);
Said say_suckers(const SuckerFacts& facts, const HouseRules& house);
extern const Rule suckers;

}  // namespace spurwright::rules
