#include <algorithm>

#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"

namespace spurwright::ui {
namespace {

using practice::Reason;
using practice::WatchedAct;
using practice::Watching;

// The act by name, why it is done, and one press down whose rules these are.
void act_says(Ui& ui, const Watching& watching, const WatchedAct& act, bool& why_open) {
    const Count number = counted(watching.at() + 1), of = counted(watching.acts().size());
    const std::string name = ui.words.sentence(act.named.key, act.named.arguments),
                      step = ui.say("screen.step." + std::string(word_of(act.step)));
    if (!ui.narrow()) text(ui, ui.say("screen.watch.act", {{"n", number}, {"of", of}, {"text", step}}), true);
    strong_text(ui, ui.narrow() ? ui.say("screen.row.act", {{"n", number}, {"text", name}}) : name);
    text(ui, ui.words.sentence(act.why.front().key, act.why.front().arguments));
    const std::size_t at_once = ui.narrow() ? 1 : 3;
    const auto line = [&](const Reason& reason) {
        const std::string says = ui.words.sentence(reason.key, reason.arguments);
        text(ui, reason.lacks ? ui.say("screen.watch.lacks", {{"text", says}}) : says, true);
    };
    for (std::size_t i = 1; i < std::min(act.why.size(), at_once); ++i) line(act.why[i]);
    if (!act.why.front().rule) return;
    if (!fold(ui, "watch.why", ui.say("screen.look.why"), why_open)) return;
    for (std::size_t i = at_once; i < act.why.size(); ++i) line(act.why[i]);
    const rules::Rule* before = nullptr;
    for (const Reason& reason : act.why) {
        if (reason.rule && reason.rule != before) shown_sources(ui, *reason.rule, reason.status);
        before = reason.rule;
    }
}

// On the ladder: that it goes with the trainee's own choice, and what of that no plan can keep.
void shown_with_yours(const State& state, Ui& ui) {
    if (state.practice->not_held().empty()) return text(ui, ui.say("screen.ladder.goes-with-yours"), true);
    for (const AxisId part : state.practice->not_held()) text(ui, ui.say("screen.ladder.not-held", {{"part", part}}));
}

} // namespace

Asked screen_watch(const State& state, Views& views, Ui& ui) {
    const std::optional<Watching>& watching = state.practice->watching();
    const WatchedAct* act = watching ? watching->shown() : nullptr;
    const bool over = watching && !act, with_keys = !ui.narrow(), on_ladder = over && state.practice->on_ladder();
    Asked asked;
    shown_panel(ui, "watch");
    if (act) take(asked, command_button(ui, state, views, "watch", "watch-next", Weight::main, with_keys));
    if (act) take(asked, command_button(ui, state, views, "watch", "watch-back", Weight::plain, with_keys, true));
    if (act) take(asked, command_button(ui, state, views, "watch", "watch-rest", Weight::plain, with_keys, true));
    if (on_ladder) take(asked, command_button(ui, state, views, "watch", "ladder-on", Weight::main, with_keys));
    take(asked, command_button(ui, state, views, "watch", "watch-own", over && !on_ladder ? Weight::main : Weight::plain, with_keys, act || on_ladder));
    if (over) take(asked, command_button(ui, state, views, "watch", "watch-back", Weight::plain, with_keys, true));
    take(asked, shown_ways(state, views, ui, "watch"));
    if (!watching) text(ui, ui.say("screen.watch.looking"));
    if (over) text(ui, ui.say("screen.watch.end"));
    if (act && state.practice->showing_step()) shown_with_yours(state, ui);
    if (act && watching->at() == 0 && !state.practice->showing_step()) text(ui, ui.say("screen.watch.own-pace"), true);
    if (act) act_says(ui, *watching, *act, views.shown.why_open);
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
