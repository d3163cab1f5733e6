// The ladder of the shed: where somebody stands and why, what is theirs on the next vine, and every lesson on every rung for
// whoever wants another.
#include <algorithm>

#include "render/ui/ladder_part.h"
#include "render/ui/panel.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::LadderDesk;

int chosen_rung(const LadderDesk& desk, const LadderChoice& view) { return std::clamp(view.rung.value_or(desk.standing.rung), 0, desk.top()); }

std::string title_of(const State& state, const Ui& ui, const std::string& scene) {
    for (const practice::SceneLine& line : state.shell.scenes)
        if (line.name == scene) return ui.say(line.title_key);
    return scene;
}

void next_vine_says(const State& state, const LadderDesk& desk, const LadderChoice& view, Ui& ui) {
    const int at = chosen_rung(desk, view);
    const lessons::Rung& rung = desk.rung(at);
    strong_text(ui, ui.say("screen.ladder.rung", {{"n", Count{at}}, {"of", Count{desk.top()}}, {"text", ui.say(rung.title_key)}}));
    text(ui, ui.say(rung.says_key));
    if (at == desk.standing.rung) text(ui, ui.words.sentence(desk.standing.why, desk.standing.arguments));
    else text(ui, ui.say("screen.ladder.suggested", {{"n", Count{desk.standing.rung}}, {"text", ui.say(desk.rung(desk.standing.rung).title_key)}}));
    const lessons::Lesson& lesson = desk.lessons.lessons[desk.next];
    text(ui, ui.say("screen.ladder.next", {{"text", title_of(state, ui, lesson.scene)}, {"n", counted(desk.progress[desk.next].next + 1)}}));
}

void rung_choices(const LadderDesk& desk, Views& views, Ui& ui) {
    for (int at = 0; at <= desk.top(); ++at) {
        const std::string label = ui.say("screen.ladder.rung-short", {{"n", Count{at}}, {"text", ui.say(desk.rung(at).title_key)}});
        if (at > 0) flow(ui, choice_width(ui, label));
        if (choice(ui, "ladder.rung." + std::to_string(at), label, at == chosen_rung(desk, views.ladder))) views.ladder.rung = at;
    }
}

} // namespace

Asked screen_ladder(const State& state, Views& views, Ui& ui) {
    const LadderDesk& desk = *state.ladder;
    Asked asked;
    panel_begin(ui, "ladder", middle_panel(ui, 54));
    head_text(ui, ui.say("screen.ladder.title"));
    next_vine_says(state, desk, views.ladder, ui);
    take(asked, command_button(ui, state, views, "ladder", "ladder-take", Weight::main));
    take(asked, command_button(ui, state, views, "ladder", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "ladder", "find", Weight::quiet, true, true));
    rule_line(ui);
    text(ui, ui.say("screen.ladder.any-rung"), true);
    rung_choices(desk, views, ui);
    take(asked, command_button(ui, state, views, "ladder", "ladder-lower", Weight::plain));
    take(asked, command_button(ui, state, views, "ladder", "ladder-higher", Weight::plain, true, true));
    rule_line(ui);
    strong_text(ui, ui.say("screen.ladder.lessons"));
    for (std::size_t i = 0; i < desk.lessons.lessons.size(); ++i) {
        const lessons::Lesson& lesson = desk.lessons.lessons[i];
        const learning::LessonProgress& progress = desk.progress[i];
        const std::string done = progress.walked == 0 ? ui.say("screen.ladder.not-walked")
                                                      : ui.say("screen.ladder.walked", {{"n", counted(progress.well)}, {"of", counted(progress.walked)}});
        if (list_row(ui, "ladder.lesson." + lesson.name, title_of(state, ui, lesson.scene), i == desk.next, done, 0, true))
            asked = ask::LadderVine{i, chosen_rung(desk, views.ladder)};
    }
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
