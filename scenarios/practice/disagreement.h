// "The house disagrees": what a person says against a finding, kept with everything needed to look at it again.
// Schema: assets/schemas/disagreement-1.json. Must not know: screens.
#pragma once

#include <string>

#include "scenarios/practice/practice.h"

namespace spurwright::practice {

// One JSON object on one line: vine, plan, rule set, judge, finding, note.
std::string disagreement_line(const Practice& practice, const std::string& note);

// Adds a line to a file, with a sync: what is said is kept. Fault::cannot_write.
[[nodiscard]] Result<void> add_line(const std::string& path, const std::string& line);

}  // namespace spurwright::practice
