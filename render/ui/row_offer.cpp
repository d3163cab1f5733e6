#include "render/ui/panel.h"
#include "render/ui/row_parts.h"

namespace spurwright::ui {

namespace ask = practice::ask;

bool offers_anything(const State& state) {
    return (state.shell.offers_watch || state.shell.offers_drill || state.shell.offers_questions) && state.practice && !state.practice->can_undo();
}

// Asked once at the start of a vine, never in the way: Esc, or doing it, lets it go.
Asked offer_card(const State& state, Views&, Ui& ui, float top) {
    if (!offers_anything(state)) return {};
    PanelPlace place = upper_middle(ui, top);
    place.keys_walk = false;
    Asked asked;
    ui.over = true;
    panel_begin(ui, "offer", place);
    const bool watch = state.shell.offers_watch;
    text(ui, ui.say(watch ? "screen.offer.watch-says" : state.shell.offers_drill ? "screen.offer.drill-says" : "screen.offer.questions-says"));
    const auto one = [&](std::string_view name, std::string_view words, const std::string& key, Weight weight,
                         Request request) {
        const std::string label = ui.say(words), hint = key;
        if (weight != Weight::main) flow(ui, button_width(ui, label, hint));
        if (button(ui, name, label, {weight, true, false, 0, hint})) asked = std::move(request);
    };
    if (watch) one("offer.watch", "screen.offer.watch", ui.say("screen.key.enter"), Weight::main, ask::Watch{true});
    if (state.shell.offers_drill)
        one("offer.drill", "screen.offer.drill", key_text(ui, "drill"), watch ? Weight::plain : Weight::main, ask::Drill{});
    if (state.shell.offers_questions && !watch)
        one("offer.questions", "screen.offer.questions", ui.say("screen.key.enter"), Weight::main, ask::Questions{});
    one("offer.own", "screen.offer.own", ui.say("screen.key.escape"), Weight::plain, ask::WatchOwn{});
    panel_end(ui);
    ui.over = false;
    return asked;
}

} // namespace spurwright::ui
