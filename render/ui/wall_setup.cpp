#include <algorithm>

#include "render/ui/panel.h"
#include "render/ui/wall_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;

Asked kinds(const State& state, Ui& ui) {
    Asked asked;
    bool first = true;
    for (const quiz::Kind kind : quiz::all_kinds) {
        const std::string name(word_of(kind)), label = ui.say("quiz.kind." + name);
        if (!first) flow(ui, choice_width(ui, label));
        first = false;
        if (toggle(ui, "wall.kind." + name, label, state.crew->setup.has(kind))) asked = ask::WallKind{kind};
    }
    return asked;
}

} // namespace

Asked wall_setup(const State& state, Views& views, Ui& ui) {
    const practice::CrewQuiz& crew = *state.crew;
    Asked asked;
    const PanelPlace place = middle_panel(ui, 50);
    panel_begin(ui, "wall", place);
    head_text(ui, ui.say("screen.wall.title"));
    text(ui, ui.say("screen.wall.says"));
    if (crew.stage() == practice::QuizStage::making) {
        strong_text(ui, ui.say("screen.wall.making", {{"n", Count{crew.made()}}, {"of", Count{crew.setup.questions}}}));
        panel_end(ui);
        return asked;
    }
    if (crew.offered()) {
        strong_text(ui, ui.say("screen.wall.found"));
        if (button(ui, "wall.go-on", ui.say("screen.wall.go-on"), {Weight::main})) asked = ask::WallGoOn{};
        rule_line(ui);
    }
    strong_text(ui, ui.say("screen.wall.kinds"));
    take(asked, kinds(state, ui));
    int questions = crew.setup.questions, posts = crew.setup.posts;
    if (slider(ui, "wall.questions", ui.say("screen.wall.questions", {{"n", Count{questions}}}), questions, practice::fewest_questions,
               practice::most_questions, 1))
        asked = ask::WallQuestions{questions};
    if (slider(ui, "wall.posts", ui.say("screen.wall.posts", {{"n", Count{posts}}}), posts, 0, practice::most_posts, 1)) asked = ask::WallPosts{posts};
    if (crew.has_second() && toggle(ui, "wall.languages", ui.say("screen.wall.two-languages"), crew.setup.two_languages))
        asked = ask::WallLanguages{!crew.setup.two_languages};
    text(ui, ui.say("screen.wall.house", {{"text", state.shell.house.name}}), true);
    rule_line(ui);
    if (button(ui, "wall.begin", ui.say("screen.wall.begin"), {crew.offered() ? Weight::plain : Weight::main})) asked = ask::WallBegin{};
    take(asked, command_button(ui, state, views, "wall", "crew-page", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "wall", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "wall", "safety", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "wall", "find", Weight::quiet, true, true));
    text(ui, ui.say("screen.wall.not-for-pay"), true);
    unchecked_line(ui);
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
