// The sheets that lie over any screen: finding a command by its name, the keys of the screen at hand, the trade's words.
#include <algorithm>

#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

std::optional<Request> sheet_find(const State& state, Views& views, Ui& ui) {
    std::optional<Request> asked;
    const bool stays = sheet_begin(ui, "find", ui.say("screen.find.title"), 34);
    const float title_height = ImGui::GetCursorPosY();
    const bool entered =
        text_field(ui, "find.text", ui.say("screen.find.hint"), views.find, ImGui::GetContentRegionAvail().x, true);
    // The field scrolls to itself as it takes the keys: no further than the title, then.
    if (ImGui::GetScrollY() > 0 && ImGui::GetScrollY() <= title_height) ImGui::SetScrollY(0);
    if (views.find.active && views.find.text.empty() && ImGui::IsWindowAppearing()) views.find_at = 0;
    std::vector<const Command*> found;
    for (const Command& command : commands())
        if (command.possible(state) && command.name != "find" && command.name != "enter" &&
            found_by(ui.say("screen.do." + std::string(command.name)), views.find.text))
            found.push_back(&command);
    const int count = static_cast<int>(found.size());
    if (ui.pressed({key::down})) ++views.find_at;
    if (ui.pressed({key::up})) --views.find_at;
    views.find_at = std::clamp(views.find_at, 0, std::max(count - 1, 0));
    const Command* chosen = entered && count > 0 ? found[static_cast<std::size_t>(views.find_at)] : nullptr;
    if (found.empty()) text(ui, ui.say("screen.find.none"), true);
    for (int i = 0; i < count; ++i) {
        const Command& command = *found[static_cast<std::size_t>(i)];
        const std::string label = ui.say("screen.do." + std::string(command.name));
        const bool walked = i == views.find_at;
        if (list_row(ui, "find." + std::string(command.name), label, walked, key_text(ui, command.key)))
            chosen = &command;
        if (walked && (ui.pressed({key::down}) || ui.pressed({key::up}))) ImGui::SetScrollHereY(0.5f);
    }
    sheet_end(ui);
    if (!stays) views.sheet = Sheet::none;
    if (chosen) {
        views.sheet = Sheet::none;
        asked = chosen->ask(state, views);
    }
    return asked;
}

void sheet_keys(const State& state, Views& views, Ui& ui) {
    const bool stays = sheet_begin(ui, "keys", ui.say("screen.keys.title"), 44);
    const bool two = ImGui::GetContentRegionAvail().x >= ui.em() * 36;
    text(ui,
         ui.say(over_picture(place_of(state)) ? "screen.keys.on-the-vine" : "screen.keys.elsewhere"),
         true);
    if (ImGui::BeginTable("###keys", two ? 2 : 1, ImGuiTableFlags_SizingStretchSame)) {
        for (const Command& command : commands()) {
            const std::string shown = key_text(ui, command.name);
            if (!command.holds(state) || shown.empty()) continue;
            ImGui::TableNextColumn();
            const std::string label = ui.say("screen.do." + std::string(command.name));
            const ImVec2 at = ImGui::GetCursorScreenPos();
            const float room = ImGui::GetContentRegionAvail().x;
            strong_text(ui, shown);
            if (room > ui.em() * 15) ImGui::SetCursorScreenPos({at.x + ui.em() * 8.5f, at.y});
            text(ui, label);
        }
        ImGui::EndTable();
    }
    sheet_end(ui);
    if (!stays) views.sheet = Sheet::none;
}

// What a newcomer meets in the texts, in the order one learns to read a vine.
void sheet_words(Views& views, Ui& ui) {
    constexpr std::string_view explained[] = {"head", "cane", "old-cane", "bark",  "spur",  "node",  "bud", "base",
                                              "stub", "sucker", "lay",    "spare", "posts", "tools", "hand"};
    const bool stays = sheet_begin(ui, "words", ui.say("screen.words.title"), 44);
    for (const std::string_view word : explained) {
        strong_text(ui, ui.say("screen.words." + std::string(word)));
        text(ui, ui.say("screen.words." + std::string(word) + "-is"));
    }
    unchecked_line(ui);
    sheet_end(ui);
    if (!stays) views.sheet = Sheet::none;
}

} // namespace spurwright::ui
