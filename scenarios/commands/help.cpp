#include "scenarios/commands/help.h"

#include <algorithm>

#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

std::string option_text(const VerbOption& option) {
    return std::string(option.name) + (option.value.empty() ? "" : " " + std::string(option.value));
}

std::string rows_text(const std::vector<std::pair<std::string, std::string>>& rows) {
    std::size_t widest = 0;
    for (const auto& row : rows) widest = std::max(widest, row.first.size());
    std::string out;
    for (const auto& [name, about] : rows)
        out += words::hanging("  " + words::padded(name, std::min<std::size_t>(widest, 30)) + "  ", about,
                              std::min<std::size_t>(widest, 30) + 4);
    return out;
}

} // namespace

std::string group_help_text(std::string_view group, const words::Words& words) {
    std::vector<std::pair<std::string, std::string>> rows;
    for (const Verb& verb : all_verbs())
        if (verb.name.starts_with(std::string(group) + " ")) rows.emplace_back(std::string(verb.name), words.sentence(verb.about));
    return words("help.usage") + " spurwright " + std::string(group) + " ...\n\n" + rows_text(rows);
}

std::string help_text(const words::Words& words) {
    std::string out = words::wrapped(words("help.command")) + "\n" + words("help.usage") + " spurwright " +
                      words("help.verb") + " ...\n\n";
    std::vector<std::pair<std::string, std::string>> rows;
    for (const Verb& verb : all_verbs()) rows.emplace_back(std::string(verb.name), words.sentence(verb.about));
    out += rows_text(rows) + "\n" + words::wrapped(words("help.more")) + "\n" + words::wrapped(words("safety.line"));
    return out;
}

std::string help_text(const Verb& verb, const words::Words& words) {
    std::string usage =
        "spurwright " + std::string(verb.name) + (verb.subject.empty() ? "" : " " + std::string(verb.subject));
    std::vector<std::pair<std::string, std::string>> rows;
    for (const VerbOption& option : verb.options) {
        if (option.required) usage += " " + option_text(option);
        rows.emplace_back(option_text(option), words.sentence(option.about));
    }
    rows.emplace_back("--language L", words("option.language"));
    rows.emplace_back("--json", words("option.json"));
    rows.emplace_back("--help", words("option.help"));
    return words.sentence(verb.about) + "\n\n" + words("help.usage") + " " + usage + " ...\n\n" + rows_text(rows);
}

} // namespace spurwright::commands
