// acceptable for a cordon: its plans as good, by the canes kept as spurs along the two arms.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/io/house_rules_file.h"
#include "sim/vine/vine.h"

namespace spurwright::commands {

inline constexpr std::size_t most_groups = 20; // of plans as good that are listed

// `vine` is an uncut cordon that can be judged. How many sets of canes there are is not counted: null where more than the
// listed ones are as good.
[[nodiscard]] Result<Answer> acceptable_of_cordon(const Asked& asked, const Vine& vine, const io::HouseRulesFile& house,
                                                  const words::Words& words);

} // namespace spurwright::commands
