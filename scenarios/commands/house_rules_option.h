// --rules NAME|FILE: the house rules a verb judges by; the general set where nothing is said.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/io/house_rules_file.h"

namespace spurwright::commands {

[[nodiscard]] Result<io::HouseRulesFile> house_rules_asked(const Asked& asked, const Surroundings& around);
VerbOption rules_option();

} // namespace spurwright::commands
