#include <algorithm>
#include <array>

#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

namespace ask = practice::ask;

std::optional<Request> screen_safety(const State& state, Views&, const std::vector<Spoken>& spoken, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const bool first = !state.shell.settings.safety_seen;
    std::optional<Request> asked;
    ImGui::GetBackgroundDrawList()->AddRectFilled({0, 0}, screen, ui.colours().raised);
    const PanelPlace place = middle_panel(ui, 40);
    panel_begin(ui, "safety", place);
    head_text(ui, "Spurwright");
    for (const Spoken& language : spoken) {
        if (&language != &spoken.front()) flow(ui, choice_width(ui, language.name));
        if (choice(ui, "safety.language." + language.code, language.name,
                   language.code == state.shell.settings.language))
            asked = ask::Speak{language.code};
    }
    rule_line(ui);
    strong_text(ui, ui.say("screen.safety.title"));
    for (const std::string_view line : std::array<std::string_view, 4>{
             "screen.safety.eyes", "screen.safety.gloves", "screen.safety.free-hand", "screen.safety.look-around"}) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float r = ui.em() * 0.22f;
        ImGui::GetWindowDrawList()->AddRectFilled({at.x, at.y + ui.em() * 0.5f - r},
                                                  {at.x + 2 * r, at.y + ui.em() * 0.5f + r}, ui.colours().accent);
        ImGui::Indent(ui.em());
        text(ui, ui.say(line));
        ImGui::Unindent(ui.em());
    }
    text(ui, ui.say("safety.line"), true);
    const std::string label = ui.say(first ? "screen.safety.read" : "screen.safety.back");
    if (button(ui, "safety.read", label, {Weight::main, true, false, 0, ui.say("screen.key.enter")}))
        asked = ask::SafetySeen{};
    unchecked_line(ui);
    panel_end(ui);
    // Enter reads on wherever the walk by keys stands, unless it stands on a language.
    if (!asked && ui.pressed({key::enter}) && !ImGui::GetIO().NavVisible) asked = ask::SafetySeen{};
    return asked;
}

} // namespace spurwright::ui
