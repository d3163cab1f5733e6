// Take everything you do not need off the vine and off the wire. Trunk and rootstock growth has its own rule.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ, 80 to 95 %, of last summer's growth: it follows the vine's size, not skill, so the share is a remark.
inline constexpr std::array wood_left_behind_claims{
    Claim{&sources::smith_2023, "one-year wood taken off in a normal year", 0.90, 1.0, "share"},
    Claim{&sources::boundarybreaks, "share taken off", 0.90, 0.90, "share"},
    Claim{&sources::ehow, "share taken off", 0.90, 0.90, "share"},
    Claim{&sources::auburn_2021, "share of buds taken off", 0.80, 0.80, "share"},
    Claim{&sources::neilsperry, "share of cane growth taken off", 0.80, 0.85, "share"},
    says(sources::zabadal_2002, "shake the trunk to find what still hangs"),
};

// One piece left costs half, two or last winter's laid cane all.
PerMille mark_wood_left_behind(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing);
Said say_wood_left_behind(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing);
// The share of last summer's nodes that came off: a remark.
Said say_share_removed(const ClearingFacts& clearing);
extern const Rule wood_left_behind;

// "a5, a9, a12", at most five names and then dots: part names are the same in every language.
std::string list_of(const std::vector<AxisId>& parts);

}  // namespace spurwright::rules
