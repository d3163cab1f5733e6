#include <algorithm>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/places.h"
#include "render/ui/screens.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;

using DrawPlace = void (*)(ImDrawList&, const Box&, const Palette&, float);

// The picture of a place, pressed as a whole; its words stand beneath.
bool door(Ui& ui, std::string_view name, const std::string& label, DrawPlace draw_place, float height) {
    const float width = ImGui::GetContentRegionAvail().x;
    const bool pressed = ImGui::InvisibleButton(("###" + std::string(name)).c_str(), {width, height});
    const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw_place(draw, {from.x, from.y, to.x, to.y}, ui.colours(), ui.em());
    const bool focused = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible, lit = focused || ImGui::IsItemHovered();
    draw.AddRect(from, to, lit ? ui.colours().ink : ui.colours().line, corner, 0, lit ? 3.0f : 1.0f);
    record(ui, name, label, from, to, 0, true);
    return pressed || (focused && ui.pressed({key::enter}));
}

Asked row_door(const State& state, Views& views, Ui& ui, float picture) {
    Asked asked;
    const bool under_way = state.practice && !state.practice->finished();
    const std::string title = ui.say("screen.home.row");
    if (picture > 0 && door(ui, "home.row", title, draw_row_place, picture))
        asked = under_way ? Request{ask::GoTo{practice::Screen::row}} : Request{ask::NextVine{}};
    head_text(ui, title);
    text(ui, ui.say("screen.home.row-says"));
    for (const auto& [system, name] : {std::pair{System::two_cane, "two-cane"}, std::pair{System::one_cane, "one-cane"}, std::pair{System::cordon, "cordon"}}) {
        const std::string label = ui.say("screen.home.row-of." + std::string(name));
        if (system != System::two_cane) flow(ui, choice_width(ui, label));
        if (choice(ui, "home.row-of." + std::string(name), label, state.shell.row_system == system)) asked = ask::RowOf{system};
    }
    if (under_way) {
        if (button(ui, "home.go-on", ui.say("screen.home.go-on"), {Weight::main, true, false, 0, {}}))
            asked = ask::GoTo{practice::Screen::row};
        flow(ui, button_width(ui, ui.say("screen.do.next-vine")));
    }
    if (button(ui, "home.next-vine", ui.say("screen.do.next-vine"),
               {under_way || state.shell.offered || state.shell.walked.empty() ? Weight::plain : Weight::main, true, false, 0, {}}))
        asked = ask::NextVine{};
    if (auto way = command_button(ui, state, views, "home", "way", Weight::plain, false, true)) asked = std::move(way);
    const std::string open = ui.say("screen.home.open-code"), hint = ui.say("screen.home.code-hint");
    const float wide = ImGui::GetContentRegionAvail().x, beside = button_width(ui, open),
                field = text_size(ui, hint, 0).x + 3 * ui.grid.gap();
    const bool entered = text_field(ui, "home.code", hint, views.home.code,
                                    field + beside + ui.grid.gap() <= wide ? wide - beside - ui.grid.gap() : wide);
    flow(ui, beside);
    const bool typed = !views.home.code.text.empty();
    if ((button(ui, "home.open-code", open, {Weight::plain, typed, false, 0, {}}) || entered) && typed)
        asked = ask::OpenCode{views.home.code.text};
    return asked;
}

// Whose everything is that is done from here on; pressed, another takes the seat.
Asked seat_line(const State& state, Views& views, Ui& ui) {
    const auto& sits = state.shell.sits;
    const std::string label = !sits               ? ui.say("screen.home.nobody-sits")
                              : sits->name.empty() ? ui.say("screen.home.sits", {{"n", Count{sits->number}}})
                                                   : ui.say("screen.home.sits-name", {{"n", Count{sits->number}}, {"text", sits->name}});
    flow(ui, button_width(ui, label));
    if (!button(ui, "home.seat", label)) return {};
    views.seat.number = {{}, true, false};
    return ask::Seat{};
}

// Under the row's door, where the shed's list leaves room: short looks.
Asked looks_door(const State& state, Views& views, Ui& ui) {
    ImGui::Dummy({1, ui.grid.half()});
    head_text(ui, ui.say("screen.looks.title"));
    text(ui, ui.say("screen.home.looks-says"));
    return command_button(ui, state, views, "home", "looks", Weight::plain, false);
}

// And the crew's quiz.
Asked wall_door(const State& state, Views& views, Ui& ui) {
    ImGui::Dummy({1, ui.grid.half()});
    head_text(ui, ui.say("screen.home.wall"));
    text(ui, ui.say("screen.home.wall-says"));
    return command_button(ui, state, views, "home", "wall");
}

// Beneath it: weighing, and what was weighed.
Asked scale_door(const State& state, Views& views, Ui& ui) {
    ImGui::Dummy({1, ui.grid.half()});
    head_text(ui, ui.say("screen.home.scale"));
    text(ui, ui.say("screen.home.scale-says"));
    Asked asked;
    take(asked, command_button(ui, state, views, "home", "weigh", Weight::plain, false));
    take(asked, command_button(ui, state, views, "home", "book", Weight::plain, false));
    return asked;
}

// The first vine of the scene not walked in this sitting; all walked: the first again.
ask::OpenScene next_of(const State& state, const practice::SceneLine& scene, std::size_t& walked) {
    std::vector<bool> done(scene.vines, false);
    for (const practice::WalkedVine& vine : state.shell.walked)
        if (vine.scene == scene.name && vine.number < done.size()) done[vine.number] = true;
    walked = static_cast<std::size_t>(std::count(done.begin(), done.end(), true));
    const auto fresh = std::find(done.begin(), done.end(), false);
    return {scene.name, fresh == done.end() ? 0 : static_cast<std::size_t>(fresh - done.begin())};
}

// The scenes that there are, each with what it asks in one line.
Asked shed_door(const State& state, Views& views, Ui& ui, float picture) {
    Asked asked;
    const std::string title = ui.say("screen.home.shed");
    if (picture > 0 && door(ui, "home.shed", title, draw_shed_place, picture) && !state.shell.scenes.empty())
        asked = ask::OpenScene{state.shell.scenes.front().name, 0};
    head_text(ui, title);
    text(ui, ui.say("screen.home.shed-says"));
    take(asked, command_button(ui, state, views, "home", "ladder", Weight::plain, false));
    const bool newcomer = state.shell.walked.empty() && !state.shell.offered;
    for (const practice::SceneLine& scene : state.shell.scenes) {
        std::size_t walked = 0;
        const ask::OpenScene next = next_of(state, scene, walked);
        const std::string label =
            newcomer && &scene == &state.shell.scenes.front()
                ? ui.say("screen.home.start-here", {{"text", ui.say(scene.title_key)}})
            : walked == 0 ? ui.say(scene.title_key)
                        : ui.say("screen.home.scene-walked", {{"text", ui.say(scene.title_key)},
                                                              {"n", Count{static_cast<std::int64_t>(walked)}},
                                                              {"of", Count{static_cast<std::int64_t>(scene.vines)}}});
        if (newcomer && &scene == &state.shell.scenes.front()) {
            if (button(ui, "home.scene." + scene.name, label, {Weight::main, true, false, 0, {}})) asked = next;
            text(ui, ui.say(scene.task_key), true);
            continue;
        }
        if (list_row(ui, "home.scene." + scene.name, label, false, ui.say(scene.task_key), 0, true)) asked = next;
    }
    return asked;
}

// A scene's vine by the scene and its number, any other by its code.
std::string walked_label(const State& state, const Ui& ui, const practice::WalkedVine& vine) {
    for (const practice::SceneLine& scene : state.shell.scenes)
        if (scene.name == vine.scene)
            return ui.say("screen.home.scene-vine", {{"text", ui.say(scene.title_key)},
                                                     {"n", Count{static_cast<std::int64_t>(vine.number) + 1}}});
    return vine.code;
}

// Work from before, found at the start.
Asked offer(const State& state, Ui& ui) {
    Asked asked;
    strong_text(ui, ui.say("screen.say.found-work"));
    const practice::WalkedVine& vine = state.shell.offered_vine;
    const Count acts{static_cast<std::int64_t>(state.shell.offered_acts)};
    if (!vine.scene.empty())
        text(ui, ui.say("screen.say.found-work-scene", {{"text", walked_label(state, ui, vine)}, {"n", acts}}));
    else if (!vine.code.empty())
        text(ui, ui.say("screen.say.found-work-of", {{"code", vine.code}, {"n", acts}}));
    const std::string no = ui.say("screen.say.begin-new");
    if (button(ui, "say.go-on", ui.say("screen.say.go-on"), {Weight::main, true, false, 0, {}}))
        asked = ask::OfferTaken{true};
    flow(ui, button_width(ui, no));
    if (button(ui, "say.begin-new", no)) asked = ask::OfferTaken{false};
    return asked;
}

// The vines finished in this sitting, standing in a row; each is the way back to it.
Asked row_walked(const State& state, Ui& ui) {
    Asked asked;
    const auto& walked = state.shell.walked;
    if (walked.empty()) {
        text(ui, ui.say("screen.home.none-walked"), true);
        return {};
    }
    text(ui, ui.say("screen.home.walked-row", {{"n", Count{static_cast<std::int64_t>(walked.size())}}}), true);
    for (std::size_t i = 0; i < walked.size(); ++i) {
        const float side = ui.em() * 3; // of the square each stands in
        if (i > 0) flow(ui, side);
        const std::string name = "home.walked." + std::to_string(i);
        const practice::WalkedVine& vine = walked[i];
        const std::string label = walked_label(state, ui, vine);
        if (ImGui::InvisibleButton(("###" + name).c_str(), {side, side}))
            asked = vine.scene.empty() ? Request{ask::OpenCode{vine.code}}
                                       : Request{ask::OpenScene{vine.scene, vine.number}};
        const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
        ImDrawList& draw = *ImGui::GetWindowDrawList();
        const bool lit = ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
        if (lit) draw.AddRect(from, to, ui.colours().ink, corner, 0, 2);
        draw_small_vine(draw, {(from.x + to.x) / 2, to.y - 3}, side * 0.9f, ui.colours(), true);
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", label.c_str());
        record(ui, name, label, from, to, 0, true);
    }
    return asked;
}

} // namespace

Asked screen_home(const State& state, Views& views, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    const auto take = [&](Asked one) {
        if (one) asked = std::move(one);
    };
    PanelPlace place;
    place.width = screen.x;
    place.most_height = screen.y;
    place.full_height = true;
    panel_begin(ui, "home", place);
    const float side = std::max(0.0f, (screen.x - ui.em() * 76) / 2); // no line of text wider than can be read
    if (side > 0) ImGui::Indent(side);
    head_text(ui, "Spurwright");
    for (const std::string_view name : {"find", "settings", "safety", "words", "keys", "leave"})
        take(command_button(ui, state, views, "home", name, Weight::quiet, name != "settings", name != "find"));
    take(seat_line(state, views, ui));
    if (state.shell.offered) {
        rule_line(ui);
        take(offer(state, ui));
        rule_line(ui);
    }
    if (state.shell.read_only) text(ui, ui.say("screen.row.read-only"));
    const bool wide = screen.x >= ui.em() * 44;
    const std::size_t scenes = state.shell.scenes.size();
    const float share = scenes > 8 ? 0.14f : scenes > 2 ? 0.3f : 0.45f; // few scenes leave more room for the places
    const float picture = wide ? std::clamp(screen.y * share, ui.em() * 6, ui.em() * 24) : 0;
    const float room = std::max(ImGui::GetContentRegionAvail().x - side, ui.em() * 10);
    if (ImGui::BeginTable("###doors", wide ? 2 : 1, ImGuiTableFlags_SizingStretchSame, {room, 0})) {
        ImGui::TableNextColumn();
        take(row_door(state, views, ui, picture));
        take(row_walked(state, ui)); // beneath the row, where the shed's list leaves room
        take(looks_door(state, views, ui));
        take(wall_door(state, views, ui));
        take(scale_door(state, views, ui));
        ImGui::TableNextColumn();
        take(shed_door(state, views, ui, picture));
        ImGui::EndTable();
    }
    unchecked_line(ui);
    panel_end(ui);
    if (state.shell.message) take(say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
