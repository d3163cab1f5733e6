#include "scenarios/commands/drawn_verbs.h"

#include <unistd.h>

#include <array>

#include "scenarios/commands/command_line.h"
#include "scenarios/commands/house_rules_option.h"

namespace spurwright::commands {
namespace {

Result<Answer> no_window(const Asked&, const Surroundings&) {
    return failure(refusal(Fault::missing, "error.picture.no-window", {}, "spurwright-window"));
}

Result<Answer> no_paper(const Asked&, const Surroundings&) {
    return failure(refusal(Fault::missing, "error.paper.no-program", {}, "spurwright-paper"));
}

std::string sibling(const Verb& verb) {
    std::array<char, 4096> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    const std::string_view whole(path.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    return std::string(whole.substr(0, whole.rfind('/') + 1)) + (verb.answer == no_paper ? "spurwright-paper" : "spurwright-window");
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
             {"--seen-as", "NAME", TextKey{"option.seen-as"}},
             {"--plain", "", TextKey{"option.plain"}},
             {"--places", "LIST", TextKey{"option.places"}},
             {"-o", "FILE", TextKey{"option.output"}, true}},
            no_window};
}

Verb turn_verb() {
    return {"turn",
            "CODE|FILE",
            TextKey{"verb.turn"},
            {{"--plan", "TEXT", TextKey{"option.plan"}},
             {"--pictures", "N", TextKey{"option.pictures"}},
             {"--size", "WxH", TextKey{"option.size"}},
             {"--light", "NAME", TextKey{"option.light"}},
             {"--seen-as", "NAME", TextKey{"option.seen-as"}},
             {"-o", "FOLDER", TextKey{"option.turn-output"}, true}},
            no_window};
}

Verb export_verb() {
    return {"export",
            "CODE|FILE",
            TextKey{"verb.export"},
            {{"--plan", "TEXT", TextKey{"option.plan"}}, {"-o", "FILE", TextKey{"option.output"}, true}, rules_option()},
            no_window};
}

Verb paper_verb() {
    return {"paper", "FILE", TextKey{"verb.paper"}, {{"-o", "FILE", TextKey{"option.output"}, true}}, no_paper};
}

Verb book_plot_verb() {
    return {"book plot", "BLOCK", TextKey{"verb.book-plot"},
            {{"-o", "FILE", TextKey{"option.plot-output"}, true},
             {"--row", "NAME", TextKey{"option.block-row"}},
             {"--from", "WINTER", TextKey{"option.from-winter"}},
             {"--to", "WINTER", TextKey{"option.to-winter"}},
             {"--confidence", "PERCENT", TextKey{"option.confidence"}}},
            no_paper};
}

Verb book_sheet_verb() {
    return {"book sheet", "BLOCK", TextKey{"verb.book-sheet"}, {{"-o", "FILE", TextKey{"option.output"}, true}, {"--row", "NAME", TextKey{"option.block-row"}}}, no_paper};
}

Verb quiz_make_verb() {
    return {"quiz make", "", TextKey{"verb.quiz-make"},
            {{"--items", "N", TextKey{"option.quiz-items"}, true},
             {"--seed", "S", TextKey{"option.quiz-seed"}, true},
             {"--kinds", "LIST", TextKey{"option.quiz-kinds"}},
             {"--key", "", TextKey{"option.quiz-key"}},
             rules_option(),
             {"-o", "FILE", TextKey{"option.output"}, true}},
            no_paper};
}

Verb audit_sheet_verb() {
    return {"audit sheet", "FILE", TextKey{"verb.audit-sheet"},
            {{"--vines", "N", TextKey{"option.audit-vines"}}, {"--second", "", TextKey{"option.audit-second"}},
             {"--looking", "", TextKey{"option.audit-looking"}}, {"-o", "FILE", TextKey{"option.output"}, true}},
            no_paper};
}

bool is_drawn(const Verb& verb) { return verb.answer == no_window || verb.answer == no_paper; }

void hand_over_drawing(const std::vector<std::string>& arguments) {
    const auto line = read_command_line(arguments);
    if (!line || !line->verb || line->help || !is_drawn(*line->verb)) return;
    std::string program = sibling(*line->verb);
    std::vector<std::string> words = arguments;
    std::vector<char*> all{program.data()};
    for (std::string& word : words) all.push_back(word.data());
    all.push_back(nullptr);
    ::execv(program.c_str(), all.data());
}

}  // namespace spurwright::commands
