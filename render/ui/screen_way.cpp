// What to do next and why; vines met before, each with the reason why it comes back; what is to be looked at.
#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;

void rules_to_watch(const practice::WayAhead& way, Ui& ui) {
    if (way.rules.empty()) return;
    strong_text(ui, ui.say("screen.way.rules"));
    std::size_t shown = 0;
    for (const learning::RuleProgress& rule : way.rules) {
        if (++shown > 5) break;
        text(ui, ui.say("screen.way.rule-line", {{"text", ui.say("rule." + std::string(rules::key_of(rule.rule)) + ".name")},
                                                 {"word", ui.say("drill.mastery." + std::string(word_of(rule.mastery)))},
                                                 {"n", Count{rule.lost}},
                                                 {"of", Count{rule.vines}}}));
    }
}

} // namespace

Asked screen_way(const State& state, Views& views, Ui& ui) {
    const practice::WayAhead& way = *state.way;
    Asked asked;
    const PanelPlace place = middle_panel(ui, 50);
    panel_begin(ui, "way", place);
    head_text(ui, ui.say("screen.way.title"));
    strong_text(ui, ui.say("screen.way.thing." + std::string(way.next.thing == learning::NextThing::first_scene ? "first-scene"
                                                             : way.next.thing == learning::NextThing::looks     ? "looks"
                                                             : way.next.thing == learning::NextThing::met_vine  ? "met-vine"
                                                                                                                : "new-vine")));
    text(ui, ui.words.sentence(way.next.why, way.next.arguments));
    take(asked, command_button(ui, state, views, "way", "way-take", Weight::main));
    take(asked, command_button(ui, state, views, "way", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "way", "find", Weight::quiet, true, true));
    rule_line(ui);
    strong_text(ui, ui.say("screen.way.met"));
    if (way.returning.empty()) text(ui, ui.say(way.past.empty() ? "screen.way.none-met" : "screen.way.all-good", {{"n", Count{static_cast<std::int64_t>(way.past.size())}}}), true);
    for (const learning::Returning& returning : way.returning) {
        const records::PastVine& vine = way.past[returning.at];
        const std::string label = ui.say("screen.way.cut-again", {{"text", vine.code.empty() ? vine.vine_hash.substr(0, 8) : vine.code}});
        if (list_row(ui, "way.met." + std::to_string(returning.at), label, false, ui.words.sentence(returning.why, returning.arguments), 0, true)) asked = ask::OpenMet{returning.at};
    }
    if (!way.rules.empty()) rule_line(ui);
    rules_to_watch(way, ui);
    text(ui, ui.say("screen.way.no-exam"), true);
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
