#include "scenarios/commands/command.h"

#include "scenarios/commands/command_line.h"
#include "scenarios/commands/error_text.h"
#include "scenarios/commands/help.h"
#include "scenarios/words/load_words.h"

namespace spurwright::commands {
namespace {

Printed refused(const Error& error, const words::Words& words, bool json) {
    return {"", json ? io::print_json_line(error_object(error, words)) + "\n" : error_line(error, words),
            exit_status(error)};
}

// The line every page carries while a wording of its language is open.
std::string page(std::string text, const words::Words& words) {
    if (words.unchecked()) text += "\n" + words("words.unchecked") + "\n";
    return text;
}

} // namespace

Printed run_command(const std::vector<std::string>& arguments, const std::vector<Verb>& verbs,
                    void (*progress)(int done, int of)) {
    const bool json = json_asked(arguments);
    const auto assets = io::find_assets();
    if (!assets) return refused(assets.error(), words::bare_words(), json);
    const auto words = words::load_words(*assets, language_asked(arguments));
    if (!words) {
        const auto english = words::load_words(*assets, "en");
        return refused(words.error(), english ? *english : words::bare_words(), json);
    }
    const auto line = read_command_line(arguments, verbs);
    if (!line) return refused(line.error(), *words, json);
    if (line->version) return {"spurwright " SPURWRIGHT_VERSION "\n", "", 0};
    if (!line->group.empty()) return {page(group_help_text(line->group, *words), *words), "", 0};
    if (line->help) return {page(line->verb ? help_text(*line->verb, *words) : help_text(*words), *words), "", 0};
    auto answer = line->verb->answer(line->asked, {*assets, *words, progress});
    if (!answer) return refused(answer.error(), *words, json);
    return {json ? io::print_json(answer->object) : page(std::move(answer->text), *words), "", answer->status};
}

} // namespace spurwright::commands
