// The verb `picture` with its answer: a vine, a plan where one is given, one PNG.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::app {

// Every verb that this program answers.
const std::vector<commands::Verb>& drawing_verbs();

}  // namespace spurwright::app
