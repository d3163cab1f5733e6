#include "render/ui/panel.h"

#include <algorithm>
#include <string>
#include <utility>

#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

constexpr float lines_a_press = 3, share_of_page = 0.85f; // our choice

void scroll_by_keys(const Ui& ui) {
    if (!ui.free_keys) return;
    const float line = ImGui::GetTextLineHeightWithSpacing() * lines_a_press, page = ImGui::GetWindowHeight() * share_of_page;
    const std::pair<int, float> moves[] = {{key::down, line}, {key::up, -line}, {key::page_down, page}, {key::page_up, -page}};
    for (const auto& [k, by] : moves)
        if (ui.pressed({k})) ImGui::SetScrollY(std::clamp(ImGui::GetScrollY() + by, 0.0f, ImGui::GetScrollMaxY()));
}

} // namespace

PanelPlace upper_middle(const Ui& ui, float top) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    PanelPlace place;
    place.x = screen.x / 2;
    place.y = top + ui.grid.gap();
    place.pivot_x = 0.5f;
    place.width = std::min(ui.em() * 34, screen.x - 2 * ui.grid.gap());
    place.most_height = screen.y - place.y - ui.grid.gap();
    return place;
}

PanelPlace middle_panel(const Ui& ui, float width_em) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    PanelPlace place;
    place.x = screen.x / 2;
    place.y = screen.y / 2;
    place.pivot_x = place.pivot_y = 0.5f;
    place.width = std::min(ui.em() * width_em, screen.x - 2 * ui.grid.gap());
    place.most_height = screen.y - 2 * ui.grid.gap();
    return place;
}

void panel_begin(Ui& ui, std::string_view name, const PanelPlace& place) {
    ++ui.panels;
    ui.panel = name;
    const float most = std::max(place.most_height, ui.grid.row());
    ImGui::SetNextWindowPos({place.x, place.y}, ImGuiCond_Always, {place.pivot_x, place.pivot_y});
    ImGuiWindowFlags flags = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                             ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings |
                             ImGuiWindowFlags_NoNavFocus;
    if (place.full_height) {
        ImGui::SetNextWindowSize({place.width, most});
    } else {
        ImGui::SetNextWindowSizeConstraints({place.width, 1}, {place.width, most});
        flags |= ImGuiWindowFlags_AlwaysAutoResize;
    }
    if (!place.keys_walk) flags |= ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoFocusOnAppearing;
    if (place.bare) flags |= ImGuiWindowFlags_NoBackground;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, place.bare ? 0.0f : 1.0f);
    ImGui::Begin(("###panel." + std::string(name)).c_str(), nullptr, flags);
    ImGui::PopStyleVar();
    ui.scrolls = place.keys_scroll;
    if (place.keys_scroll) scroll_by_keys(ui);
}

Box panel_end(Ui& ui) {
    const ImVec2 at = ImGui::GetWindowPos(), size = ImGui::GetWindowSize();
    const Box box{at.x, at.y, at.x + size.x, at.y + size.y};
    ui.scrolls = false;
    ImGui::End();
    ui.boxes.push_back(box);
    if (ui.probe) ui.probe->add(ProbedPanel{ui.panel, box, ui.over});
    return box;
}

bool sheet_begin(Ui& ui, std::string_view name, const std::string& title, float width_em) {
    ImGui::GetBackgroundDrawList()->AddRectFilled({0, 0}, ImGui::GetIO().DisplaySize, ui.colours().backdrop);
    ui.over = true;
    panel_begin(ui, name, middle_panel(ui, width_em));
    const std::string close = ui.say("screen.close");
    const float close_width = button_width(ui, close, ui.say("screen.key.escape"));
    ImGui::PushTextWrapPos(0);
    const float room = ImGui::GetContentRegionAvail().x - close_width - ui.grid.gap();
    const bool beside = text_size(ui, title, 0, true).x * head_size * 1.05f < room;
    if (!beside) head_text(ui, title);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    if (beside) ImGui::SetCursorScreenPos({at.x + room + ui.grid.gap(), at.y});
    const bool closed =
        button(ui, std::string(name) + ".close", close, {Weight::plain, true, false, 0, ui.say("screen.key.escape")});
    if (beside) {
        const ImVec2 after = ImGui::GetCursorScreenPos();
        ImGui::SetCursorScreenPos({at.x, at.y + ui.em() * 0.25f});
        head_text(ui, title);
        ImGui::SetCursorScreenPos({after.x, std::max(after.y, ImGui::GetCursorScreenPos().y)});
    }
    ImGui::PopTextWrapPos();
    rule_line(ui);
    return !closed && !ui.pressed({key::escape});
}

void sheet_end(Ui& ui) {
    panel_end(ui);
    ui.over = false;
}

} // namespace spurwright::ui
