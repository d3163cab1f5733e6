#include "render/ui/shown_parts.h"

#include <algorithm>

#include "sim/rules/findings.h"

namespace spurwright::ui {

void shown_panel(Ui& ui, std::string_view screen) {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    PanelPlace place;
    place.x = size.x / 2;
    place.y = size.y - ui.grid.half();
    place.pivot_x = 0.5f;
    place.pivot_y = 1;
    place.width = std::min(ui.em() * 56, size.x - 2 * ui.grid.half());
    place.most_height = size.y * 0.5f;
    place.keys_walk = false;
    panel_begin(ui, screen, place);
}

Asked shown_ways(const State& state, Views& views, Ui& ui, std::string_view screen) {
    Asked asked;
    take(asked, command_button(ui, state, views, screen, "home", Weight::quiet, false, true));
    if (ui.narrow()) return asked; // by key and by Find
    take(asked, command_button(ui, state, views, screen, "find", Weight::quiet, true, true));
    take(asked, command_button(ui, state, views, screen, "keys", Weight::quiet, true, true));
    return asked;
}

void shown_sources(Ui& ui, const rules::Rule& rule, Status status) {
    text(ui, ui.say("rule." + std::string(rule.key()) + ".asks"));
    shown_who_says(ui, rule, status);
}

void shown_who_says(Ui& ui, const rules::Rule& rule, Status status) {
    std::string sources;
    for (const std::string_view source : rules::source_keys(rule))
        sources += (sources.empty() ? "" : ", ") + std::string(source);
    const TextKey line = rules::source_line(rule, status);
    text(ui, ui.say("screen.look.who-says", {{"text", ui.words.sentence(line, {{"sources", sources}})}}), true);
}

} // namespace spurwright::ui
