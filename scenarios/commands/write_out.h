// What a program does with what a verb printed. The one place of the commands that touches the process's own streams.
#pragma once

#include "scenarios/commands/command.h"

namespace spurwright::commands {

// Errors to standard error, the answer to standard output; the exit status: the verb's own, or 2 with a sentence where
// standard output cannot be written whole.
int write_out(const Printed& printed);

// On standard error, on one line that is written over, from half a second on.
void show_progress(int done, int of);

} // namespace spurwright::commands
