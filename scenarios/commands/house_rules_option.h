// --rules NAME|FILE: the house rules a verb judges by; where nothing is said the general set, of a cordon the set for cordons.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/io/house_rules_file.h"
#include "sim/vine/words_of.h"

namespace spurwright::commands {

[[nodiscard]] Result<io::HouseRulesFile> house_rules_asked(const Asked& asked, const Surroundings& around,
                                                           System system = System::two_cane);
VerbOption rules_option();

} // namespace spurwright::commands
