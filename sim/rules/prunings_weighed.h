// Weigh all of last summer's wood that was cut, the tips of the laid canes too. The bundle: canes, side shoots, the spare,
// and the cut-off ends of the laid canes and the spurs; no two-year wood, no old stubs; kept wood is not added. Asked only
// where a weight is to be reported.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They do not differ in what is weighed; how far off a weight may be is our choice.
inline constexpr std::array prunings_weighed_claims{
    says(sources::fiola_2021, "one-year canes only, on a small spring scale"),
    says(sources::cornell_fifteen, "one-year canes, not two-year canes, trunk or cordon"),
    says(sources::taylor_2012, "weighed at pruning, a vine or a post space"),
    says(sources::venesemprendedores, "only this year's wood"),
};

PerMille mark_prunings_weighed(const WeighingFacts& weighing, const HouseRules& house);
Said say_prunings_weighed(const WeighingFacts& weighing, const HouseRules& house);
extern const Rule prunings_weighed;

// Whether a mass is within the house's full band of another.
bool as_heavy_as(Mass weighed, Mass truly, const HouseRules& house);

}  // namespace spurwright::rules
