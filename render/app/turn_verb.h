// The verb `turn`: once round a vine, a numbered series of PNG files.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::app {

commands::Verb turn();

}  // namespace spurwright::app
