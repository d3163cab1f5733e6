// The whole command, from arguments to what it prints: reads them, runs one verb, prints its answer or the refusal.
#pragma once

#include <string>
#include <vector>

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

struct Printed {
    std::string out, err;
    int status = 0; // 0 done, 1 the answer is no, 2 cannot be carried out as given, 3 this machine lacks something
};

// `arguments` without the program's name; `verbs` are those this program can answer. Prints nothing itself; `progress` as
// in Surroundings.
Printed run_command(const std::vector<std::string>& arguments, const std::vector<Verb>& verbs = all_verbs(),
                    void (*progress)(int done, int of) = nullptr);

} // namespace spurwright::commands
