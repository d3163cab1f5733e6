// The verb `export`: a vine as found, after a plan and after the best one, as one glTF file.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::app {

commands::Verb exporting();  // `export` is a word of the language

}  // namespace spurwright::app
