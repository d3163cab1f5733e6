// What a vine's prunings weighed in the winters before: the vine's own bundles as the house weighs them, to the scale's 10 g, one of
// them weighed wet and marked so. Must not know: screens, the store.
#pragma once

#include <string>
#include <vector>

#include "scenarios/weighing/next_buds.h"

namespace spurwright::scenes {

// Of the vine that the code grows, `winters` of them before its present one, which is named `now`, pruned as its history
// pruned it. Shorter where the vine is too young. Faults: as the code is refused.
[[nodiscard]] Result<std::vector<weighing::LoggedWinter>> vine_log(const std::string& code, const rules::HouseRules& house, int winters, int now);

} // namespace spurwright::scenes
