#include "scenarios/commands/drawn_verbs.h"

#include <unistd.h>

#include <array>

#include "scenarios/commands/command_line.h"

namespace spurwright::commands {
namespace {

Result<Answer> no_window(const Asked&, const Surroundings&) {
    return failure(refusal(Fault::missing, "error.picture.no-window", {}, "spurwright-window"));
}

std::string sibling() {
    std::array<char, 4096> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    const std::string_view whole(path.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    return std::string(whole.substr(0, whole.rfind('/') + 1)) + "spurwright-window";
}

}  // namespace

Verb picture_verb() {
    return {"picture",
            "CODE|FILE",
            TextKey{"verb.picture"},
            {{"--plan", "TEXT", TextKey{"option.plan"}},
             {"--size", "WxH", TextKey{"option.size"}},
             {"--view", "NAME", TextKey{"option.view"}},
             {"--light", "NAME", TextKey{"option.light"}},
             {"-o", "FILE", TextKey{"option.output"}, true}},
            no_window};
}

bool is_drawn(const Verb& verb) { return verb.answer == no_window; }

void hand_over_drawing(const std::vector<std::string>& arguments) {
    const auto line = read_command_line(arguments);
    if (!line || !line->verb || line->help || !is_drawn(*line->verb)) return;
    std::string program = sibling();
    std::vector<std::string> words = arguments;
    std::vector<char*> all{program.data()};
    for (std::string& word : words) all.push_back(word.data());
    all.push_back(nullptr);
    ::execv(program.c_str(), all.data());
}

}  // namespace spurwright::commands
