// Every verb that the drawing program answers.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::app {

const std::vector<commands::Verb>& drawing_verbs();

}  // namespace spurwright::app
