// Leave a thumb's width of wood beyond the last bud you keep, on canes and on spurs.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: 6-8, 19, 20-30 mm, most of the joint, or the next node; all but the first lie in full.
inline constexpr std::array end_cut_claims{
    Claim{&sources::zabadal_2002, "wood beyond the last bud", 19.05, 19.05, "mm"},
    Claim{&sources::klodd_2022, "pruning questions: a couple of centimetres", 20.0, 20.0, "mm"},
    Claim{&sources::hedrick_manual, "about an inch", 25.4, 25.4, "mm"},
    Claim{&sources::home_98905, "wood beyond the last bud", 6.0, 8.0, "mm"},
    Claim{&sources::ugniblanc_oeno, "abstract: this much above the diaphragm stopped dry-back", 20.0, 30.0, "mm"},
    says(sources::vinsanity_2013, "through the next node"),
    says(sources::deloire_2021, "two-bud spur: just below the third bud"),
    says(sources::waterpaths, "two-bud spur: just below the third bud"),
    says(sources::faundez_2021, "abstract: necrosis depends on the distance from the node, not on diameter"),
};

PerMille mark_end_cut(const EndCutFacts& end, const HouseRules& house);
Said say_end_cut(const EndCutFacts& end, AxisId part, const HouseRules& house);
extern const Rule end_cut;

}  // namespace spurwright::rules
