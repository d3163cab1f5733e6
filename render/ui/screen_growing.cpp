// A vine is sought that has what its scene asks: told while it lasts, and left with Esc.
#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

Asked screen_growing(const State& state, Views& views, Ui& ui) {
    const practice::Growing& growing = *state.shell.growing;
    panel_begin(ui, "growing", middle_panel(ui, 34));
    strong_text(ui, ui.say("screen.growing.title"));
    text(ui, ui.say("screen.growing.tried", {{"n", Count{growing.tried->load()}}, {"of", Count{growing.of}}}));
    Asked asked = command_button(ui, state, views, "growing", "growing-leave");
    unchecked_line(ui);
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
