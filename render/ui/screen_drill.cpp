#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"
#include "sim/rules/rule_list.h"

namespace spurwright::ui {
namespace {

using practice::Touch;
using practice::TouchDrill;


Asked answers(const State& state, Views& views, Ui& ui) {
    Asked asked;
    take(asked, command_button(ui, state, views, "drill", "drill-one-year", Weight::main, !ui.narrow()));
    take(asked, command_button(ui, state, views, "drill", "drill-older", Weight::main, !ui.narrow(), true));
    return asked;
}

// Right or not, in words and with a sign, and how it can be told.
void told(Ui& ui, const Touch& touch, bool& why_open) {
    strong_text(ui, ui.say(touch.right() ? "screen.drill.right" : "screen.drill.wrong",
                           {{"text", TextKey{touch.older ? "screen.drill.is-older" : "screen.drill.is-one-year"}}}));
    text(ui, ui.words.sentence(touch.key, touch.arguments));
    if (fold(ui, "drill.why", ui.say("screen.look.why"), why_open))
        shown_sources(ui, rules::rule_of(rules::RuleName::wood_age), Status::choice);
}

} // namespace

Asked screen_drill(const State& state, Views& views, Ui& ui) {
    const TouchDrill& drill = *state.practice->drill();
    const Touch* touch = drill.here();
    const bool asks = touch && !drill.answered();
    Asked asked;
    shown_panel(ui, "drill");
    if (asks) take(asked, answers(state, views, ui));
    else take(asked, command_button(ui, state, views, "drill", touch ? "drill-next" : "drill-end", Weight::main, !ui.narrow()));
    if (touch) take(asked, command_button(ui, state, views, "drill", "drill-end", Weight::quiet, !ui.narrow(), true));
    take(asked, shown_ways(state, views, ui, "drill"));
    if (touch) {
        if (asks || !ui.narrow())
            text(ui, ui.say("screen.drill.place", {{"n", counted(drill.at() + 1)}, {"of", counted(drill.touches().size())}}), true);
        if (asks) text(ui, ui.say("screen.drill.asks"));
        else told(ui, *touch, views.shown.why_open);
    } else {
        strong_text(ui, ui.say("screen.drill.end", {{"n", Count{drill.right()}}, {"of", counted(drill.touches().size())}}));
        text(ui, ui.say("screen.drill.then"));
    }
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
