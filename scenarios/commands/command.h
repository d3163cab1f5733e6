// The whole command, from arguments to what it prints: reads them, runs one verb, prints its answer or the refusal.
#pragma once

#include <string>
#include <vector>

namespace spurwright::commands {

struct Printed {
    std::string out, err;
    int status = 0; // 0 done, 1 the answer is no, 2 cannot be carried out as given, 3 this machine lacks something
};

// `arguments` without the program's name. Prints nothing itself.
Printed run_command(const std::vector<std::string>& arguments);

} // namespace spurwright::commands
