// records restore, beside the other verbs of the records (verbs.h).
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

Verb records_restore_verb();

} // namespace spurwright::commands
