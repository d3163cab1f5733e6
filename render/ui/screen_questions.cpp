#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::Question;
using practice::SceneQuestions;

std::string worded(const Ui& ui, const practice::Worded& words) { return ui.words.sentence(words.key, words.arguments); }

// Each answer with its digit; afterwards the right one with a tick, and the one that was said.
Asked answer_rows(Ui& ui, const Question& question) {
    Asked asked;
    for (std::size_t i = 0; i < question.answers.size(); ++i) {
        const std::string digit = std::to_string(i + 1);
        const bool right = question.said && i == question.right, said = question.said == i;
        const std::string label = ui.say("screen.questions.answer", {{"n", counted(i + 1)}, {"text", worded(ui, question.answers[i])}});
        const std::string shown = right ? "✓ " + label : label;
        if (list_row(ui, "question.answer-" + digit, shown, said, said ? ui.say("screen.questions.yours") : std::string(), 0, !question.said) && !question.said)
            asked = ask::SayAnswer{i};
    }
    return asked;
}

} // namespace

Asked screen_questions(const State& state, Views& views, Ui& ui) {
    const SceneQuestions& questions = *state.practice->questions();
    const Question* here = questions.here();
    const bool asks = here && !questions.answered();
    Asked asked;
    shown_panel(ui, "question");
    if (!asks) take(asked, command_button(ui, state, views, "question", here ? "question-next" : "question-end", Weight::main, !ui.narrow()));
    if (here) take(asked, command_button(ui, state, views, "question", "question-end", Weight::quiet, !ui.narrow(), !asks));
    take(asked, shown_ways(state, views, ui, "question"));
    if (here) {
        if (!ui.narrow()) text(ui, ui.say("screen.questions.nth", {{"n", counted(questions.at() + 1)}, {"of", counted(questions.all().size())}}), true);
        strong_text(ui, worded(ui, here->asks));
        take(asked, answer_rows(ui, *here));
        if (here->said) {
            strong_text(ui, ui.say(here->was_right() ? "screen.questions.right" : "screen.questions.wrong"));
            text(ui, worded(ui, here->why));
        }
    } else {
        strong_text(ui, ui.say("screen.questions.end", {{"n", Count{questions.right()}}, {"of", counted(questions.all().size())}}));
        text(ui, ui.say("screen.questions.then"));
    }
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
