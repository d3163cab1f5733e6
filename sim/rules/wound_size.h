// Small cuts do less harm; plan ahead so you never need a big one: needless wounds on head, arms and trunk.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// No disagreement on direction; only one work gives a size.
inline constexpr std::array wound_size_claims{
    Claim{&sources::hutchinsons_uk, "on trunk or head risky above this: avoid or protect", 15.0, no_number, "mm"},
    says(sources::torres_ucce, "near the trunk most dangerous; bigger means more risk"),
    says(sources::vineyardmag_five, "avoid cutting wood older than 2 years"),
};

// By the largest wound that the pieces kept did not ask for. Needed cuts cost nothing at any size.
PerMille mark_wound_size(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
Said say_wound_size(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
// A needed cut above the risky size: the remark "protect this wound".
bool wants_protection(const CutFacts& cut, const HouseRules& house);
Said say_protect(const CutFacts& cut);
extern const Rule wound_size;

// Nothing was cut though something had to be: rules about cuts then give nothing.
bool no_work_done(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing);

}  // namespace spurwright::rules
