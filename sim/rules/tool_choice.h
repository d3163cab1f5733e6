// If you must twist the shears, take the loppers; for arms take the saw.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: shears 13 or 18-20 mm, loppers 25 or 38 mm.
inline constexpr std::array tool_choice_claims{
    Claim{&sources::finegardening, "hand shears, up to", 12.7, 20.0, "mm"},
    Claim{&sources::experts123, "loppers, up to", 25.4, 25.4, "mm"},
};

TextKey tool_key(Tool tool);
// The smallest tool that suits: shears, loppers, saw. Old wood is dry and hard.
Tool suitable_tool(Length diameter, int wood_age, const HouseRules& house);
// Of one cut: a larger tool than needed is full, one size too small one half, two sizes none.
PerMille mark_tool(const CutFacts& cut, const HouseRules& house);
PerMille mark_tool_choice(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
Said say_tool_choice(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
Said say_clean_tools();  // the remark after diseased wood
extern const Rule tool_choice;

}  // namespace spurwright::rules
