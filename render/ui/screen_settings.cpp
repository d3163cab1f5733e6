#include <algorithm>

#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

namespace ask = practice::ask;

std::optional<Request> screen_settings(const State& state, Views& views, const std::vector<Spoken>& spoken, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const settings::Settings& now = state.shell.settings;
    std::optional<Request> asked;
    const auto take = [&](std::optional<Request> one) {
        if (one) asked = std::move(one);
    };
    ImGui::GetBackgroundDrawList()->AddRectFilled({0, 0}, screen, ui.colours().raised);
    const PanelPlace place = middle_panel(ui, 46);
    panel_begin(ui, "settings", place);
    head_text(ui, ui.say("screen.settings.title"));
    strong_text(ui, ui.say("screen.settings.language"));
    for (const Spoken& language : spoken) {
        if (&language != &spoken.front()) flow(ui, choice_width(ui, language.name));
        if (choice(ui, "settings.language." + language.code, language.name, language.code == now.language))
            asked = ask::Speak{language.code};
    }
    strong_text(ui, ui.say("screen.settings.text-size"));
    int percent = now.text_percent;
    if (slider(ui, "settings.text", ui.say("screen.settings.percent", {{"n", Count{percent}}}), percent,
               settings::least_text_percent, settings::most_text_percent, 25))
        asked = ask::TextScale{percent};
    strong_text(ui, ui.say("screen.settings.theme"));
    for (const auto theme : {settings::ThemeName::paper, settings::ThemeName::dusk}) {
        const std::string word(settings::words_of(theme)[static_cast<std::size_t>(theme)]),
            label = ui.say("screen.settings.theme-" + word);
        if (theme == settings::ThemeName::dusk) flow(ui, choice_width(ui, label));
        if (choice(ui, "settings.theme." + word, label, now.theme == theme)) asked = ask::Theme{word};
    }
    strong_text(ui, ui.say("screen.settings.units"));
    for (const auto units : {settings::UnitsName::mm, settings::UnitsName::inch}) {
        const std::string word(settings::words_of(units)[static_cast<std::size_t>(units)]),
            label = ui.say("screen.settings.units-" + word);
        if (units == settings::UnitsName::inch) flow(ui, choice_width(ui, label));
        if (choice(ui, "settings.units." + word, label, now.units == units)) asked = ask::Units{word};
    }
    strong_text(ui, ui.say("screen.settings.more"));
    if (toggle(ui, "settings.motion", ui.say("screen.settings.reduced-motion"), now.reduced_motion))
        asked = ask::ReducedMotion{!now.reduced_motion};
    if (toggle(ui, "settings.feedback", ui.say("screen.settings.step-feedback"), now.step_feedback))
        asked = ask::StepFeedback{!now.step_feedback};
    rule_line(ui);
    const bool vine = state.practice != nullptr;
    take(command_button(ui, state, views, "settings", vine ? "to-vine" : "home", Weight::main, false));
    if (vine) take(command_button(ui, state, views, "settings", "home", Weight::plain, false, true));
    take(command_button(ui, state, views, "settings", "house-rules", Weight::plain, false, true));
    take(command_button(ui, state, views, "settings", "safety", Weight::quiet, false, true));
    take(command_button(ui, state, views, "settings", "find", Weight::quiet, true, true));
    unchecked_line(ui);
    panel_end(ui);
    take(say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
