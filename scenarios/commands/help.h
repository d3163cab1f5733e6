// What --help prints: of the command, of one verb.
#pragma once

#include <string>

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

std::string help_text(const words::Words& words);
std::string group_help_text(std::string_view group, const words::Words& words); // verbs of two words
std::string help_text(const Verb& verb, const words::Words& words);

} // namespace spurwright::commands
