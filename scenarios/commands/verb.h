// What a verb of the command is: its name, what may stand after it, and a function from what was asked to an answer.
// Verbs neither print nor read the command line; commands/command.cpp does both, the same way for all.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/assets.h"
#include "scenarios/io/json.h"
#include "scenarios/words/words.h"
#include "sim/core/error.h"

namespace spurwright::commands {

struct VerbOption {
    std::string_view name;  // "--plan"
    std::string_view value; // what stands after it, for people: "TEXT"; empty for a switch
    TextKey about;
    bool required = false;
};

// What was asked, as text; each verb reads its own values.
struct Asked {
    std::string subject;                                    // CODE|FILE
    std::map<std::string, std::string, std::less<>> values; // by option name; a switch has an empty value

    bool has(std::string_view option) const { return values.find(option) != values.end(); }
    std::optional<std::string> value(std::string_view option) const {
        const auto at = values.find(option);
        return at == values.end() ? std::nullopt : std::optional(at->second);
    }
};

// What every verb may use.
struct Surroundings {
    const io::Assets& assets;
    const words::Words& words;
    // Tells somebody who waits how far a long answer is: so many of so many steps, from any thread, one at a time. Null:
    // nobody waits.
    void (*progress)(int done, int of) = nullptr;
};

struct Answer {
    io::Json object;  // printed with --json
    std::string text; // printed without
    int status = 0;   // 1: asked, and the answer is no
};

struct Verb {
    std::string_view name;
    std::string_view subject; // "CODE|FILE"; empty: takes none
    TextKey about;
    std::vector<VerbOption> options; // besides --json, --language and --help
    Result<Answer> (*answer)(const Asked&, const Surroundings&);
};

// Every verb, by hand, in the order of the help.
const std::vector<Verb>& all_verbs();

inline Error refusal(Fault fault, std::string_view key, Arguments arguments, std::string source) {
    return {fault, TextKey{key}, std::move(arguments), {std::move(source), 0, 0, 0}};
}

} // namespace spurwright::commands
