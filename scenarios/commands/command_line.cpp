#include "scenarios/commands/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <deque>

namespace spurwright::commands {
namespace {

const Verb* find_verb(const std::vector<Verb>& verbs, std::string_view name) {
    for (const Verb& verb : verbs)
        if (verb.name == name) return &verb;
    return nullptr;
}

// The verbs of two words that begin with this one: "crew import, crew list".
std::string verbs_beginning(const std::vector<Verb>& verbs, std::string_view word) {
    std::string names;
    for (const Verb& verb : verbs)
        if (verb.name.starts_with(std::string(word) + " ")) names += (names.empty() ? "" : ", ") + std::string(verb.name);
    return names;
}

// The options of every verb, as the verbs' own are.
std::vector<VerbOption> with_common(const Verb& verb) {
    std::vector<VerbOption> options = verb.options;
    options.push_back({"--json", "", {}});
    options.push_back({"--language", "L", {}});
    options.push_back({"--help", "", {}});
    return options;
}

Error bad(std::string_view key, Arguments arguments, std::string source) {
    return refusal(Fault::bad_text, key, std::move(arguments), std::move(source));
}

Result<CommandLine> read_verb(const Verb& verb, const std::vector<std::string>& rest) {
    const std::vector<VerbOption> options = with_common(verb);
    CLI::App app;
    app.set_help_flag();
    app.allow_extras();
    std::string subject;
    std::deque<std::string> values(options.size()); // addresses stay
    std::vector<CLI::Option*> made;
    for (std::size_t i = 0; i < options.size(); ++i) {
        const std::string name(options[i].name);
        CLI::Option* option = options[i].value.empty() ? app.add_flag(name) : app.add_option(name, values[i]);
        made.push_back(option->multi_option_policy(CLI::MultiOptionPolicy::TakeLast));
    }
    CLI::Option* subject_option = verb.subject.empty() ? nullptr : app.add_option("subject", subject);
    std::vector<std::string> reversed(rest.rbegin(), rest.rend());
    try {
        app.parse(reversed);
    } catch (const CLI::ArgumentMismatch&) {
        return failure(bad("error.option.value-missing", {}, rest.back()));
    } catch (const CLI::ParseError&) {
        return failure(bad("error.option.unreadable", {}, std::string(verb.name)));
    }
    CommandLine line;
    line.verb = &verb;
    for (std::size_t i = 0; i < options.size(); ++i) {
        if (made[i]->count() > 1) return failure(bad("error.option.twice", {}, std::string(options[i].name)));
        if (made[i]->count() == 1) line.asked.values.emplace(options[i].name, values[i]);
    }
    line.help = line.asked.has("--help");
    if (const auto extras = app.remaining(); !extras.empty()) {
        const std::string& first = extras.front();
        const bool option = first.size() > 1 && first[0] == '-';
        return failure(bad(option ? "error.option.unknown" : "error.option.too-many",
                           {{"text", first}, {"verb", std::string(verb.name)}},
                           option ? first.substr(0, first.find('=')) : std::string(verb.name)));
    }
    if (line.help) return line;
    if (subject_option && subject_option->count() == 0)
        return failure(
            bad(verb.subject == "CODE|FILE" ? "error.option.subject-missing" : "error.option.word-missing", {{"subject", std::string(verb.subject)}}, std::string(verb.name)));
    line.asked.subject = subject;
    for (const VerbOption& option : options)
        if (option.required && !line.asked.has(option.name))
            return failure(bad("error.option.missing",
                               {{"option", std::string(option.name) + " " + std::string(option.value)}},
                               std::string(verb.name)));
    return line;
}

} // namespace

Result<CommandLine> read_command_line(const std::vector<std::string>& arguments, const std::vector<Verb>& verbs) {
    std::vector<std::string> rest = arguments;
    // The verb is the first word that is no option of all verbs.
    std::size_t at = 0;
    while (at < rest.size() && (rest[at] == "--json" || rest[at].starts_with("--language")))
        at += rest[at] == "--language" ? 2u : 1u;
    if (at >= rest.size()) return failure(bad("error.verb.none", {}, ""));
    const std::string word = rest[at];
    CommandLine line;
    if (word == "--help" || word == "-h" || word == "help") {
        line.help = true;
        return line;
    }
    if (word == "--version") {
        line.version = true;
        return line;
    }
    const Verb* verb = find_verb(verbs, word);
    if (const std::string group = verb ? std::string() : verbs_beginning(verbs, word); !group.empty()) {
        const std::string second = at + 1 < rest.size() ? rest[at + 1] : "";
        if (second == "--help" || second == "-h") {
            line.help = true;
            line.group = word;
            return line;
        }
        verb = find_verb(verbs, word + " " + second);
        if (!verb) return failure(bad(second.empty() || second.starts_with('-') ? "error.verb.which" : "error.verb.unknown-of", {{"text", second}, {"words", group}}, word));
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(at));
    }
    if (!verb) return failure(bad(word.starts_with('-') ? "error.option.unknown-first" : "error.verb.unknown", {{"text", word}}, word));
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(at));
    return read_verb(*verb, rest);
}

std::string language_asked(const std::vector<std::string>& arguments) {
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        if (arguments[i].starts_with("--language=")) return arguments[i].substr(11);
        if (arguments[i] == "--language" && i + 1 < arguments.size()) return arguments[i + 1];
    }
    return "en";
}

bool json_asked(const std::vector<std::string>& arguments) {
    return std::find(arguments.begin(), arguments.end(), "--json") != arguments.end();
}

} // namespace spurwright::commands
