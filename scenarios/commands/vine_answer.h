// What `grow` and `show` say of a vine: its site, its cane candidates and last winter's laid canes.
#pragma once

#include "scenarios/commands/verb.h"
#include "scenarios/commands/vine_source.h"

namespace spurwright::commands {

Answer vine_answer(const FoundVine& found, const words::Words& words);

// The words of "notes": what is remarkable of a cane, in the order of the list below.
std::vector<std::string_view> notes_of(const Vine& vine, const Axis& axis);

} // namespace spurwright::commands
