// From the arguments of the program to the verb asked and its options. The only user of the command line library.
#pragma once

#include <string>
#include <vector>

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

struct CommandLine {
    const Verb* verb = nullptr; // null: --help or --version alone
    bool help = false, version = false;
    std::string group; // help of the verbs that begin with this word
    Asked asked;
};

// `arguments` without the program's name. Refused (bad_text): unknown verb or option, a value or the subject missing,
// an option twice, a word too many.
[[nodiscard]] Result<CommandLine> read_command_line(const std::vector<std::string>& arguments, const std::vector<Verb>& verbs = all_verbs());

// What can be known before all is read, so that even a refusal speaks the language and form asked.
std::string language_asked(const std::vector<std::string>& arguments);
bool json_asked(const std::vector<std::string>& arguments);

} // namespace spurwright::commands
