// A judgement as JSON and as text for a console of 100 columns.
#pragma once

#include <string>

#include "scenarios/io/json.h"
#include "scenarios/words/words.h"
#include "sim/rules/findings.h"

namespace spurwright::commands {

// Adds points, points_before_caps, caps, findings, remarks to the object.
void set_judgement(io::Json& object, const rules::Judgement& judgement, const words::Words& words);

// What cost points, worst first within the order of work, then what cost nothing, by name; caps and remarks.
std::string judgement_text(const rules::Judgement& judgement, const words::Words& words);

} // namespace spurwright::commands
