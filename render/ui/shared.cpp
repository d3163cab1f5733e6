#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

namespace ask = practice::ask;

std::optional<Request> command_button(Ui& ui, const State& state, Views& views, std::string_view screen,
                                      std::string_view name, Weight weight, bool with_key, bool beside) {
    const Command* command = find_command(name);
    if (!command) return {};
    const std::string label = ui.say("screen.do." + std::string(name)),
                      hint = with_key ? key_text(ui, name) : std::string();
    if (beside) flow(ui, button_width(ui, label, hint));
    const bool pressed = button(ui, std::string(screen) + "." + std::string(name), label,
                                {weight, command->possible(state), false, 0, hint});
    return pressed ? command->ask(state, views) : std::nullopt;
}

std::optional<Request> looks_fold(Ui& ui, const State& state, Views& views, std::string_view screen) {
    std::optional<Request> asked;
    if (!fold(ui, std::string(screen) + ".looks", ui.say("screen.row.looks"), views.row.looks_open)) return {};
    bool beside = false;
    for (const std::string_view name : {"view-row", "view-other-side", "view-along", "view-head", "view-cane",
                                        "view-above", "look-at", "glass", "hatch", "orbit"}) {
        if (auto one = command_button(ui, state, views, screen, name, Weight::plain, true, beside))
            asked = std::move(one);
        beside = true;
    }
    return asked;
}

void unchecked_line(Ui& ui) {
    if (ui.words.unchecked()) text(ui, ui.say("words.unchecked"), true);
}

std::optional<Request> say_panel(const State& state, Ui& ui, float top) {
    const bool waits = state.practice && state.practice->waiting().has_value() && place_of(state) == Place::row;
    if (!waits && !state.shell.message) return {};
    PanelPlace place = upper_middle(ui, top);
    place.keys_walk = !over_picture(place_of(state));
    std::optional<Request> asked;
    ui.over = true;
    panel_begin(ui, "say", place);
    if (ImGui::IsWindowAppearing()) ImGui::SetWindowFocus(); // above every card
    if (waits) {
        const practice::Waiting& waiting = *state.practice->waiting();
        text(ui, ui.words.sentence(waiting.key, waiting.arguments));
        const std::string yes = ui.say(waiting.edit ? "screen.say.cut-all-the-same" : "screen.say.look-back-all-the-same"),
                          no = ui.say(waiting.edit ? "screen.say.leave-it" : "screen.say.go-on-pruning");
        if (button(ui, "say.no", no, {Weight::main, true, false, 0, ui.say("screen.key.escape")}))
            asked = ask::TakeBack{};
        flow(ui, button_width(ui, yes, ui.say("screen.key.enter")));
        if (button(ui, "say.yes", yes, {Weight::plain, true, false, 0, ui.say("screen.key.enter")}))
            asked = ask::Confirm{};
    } else {
        text(ui, ui.words.sentence(state.shell.message->key, state.shell.message->arguments));
        if (button(ui, "say.close", ui.say("screen.close"),
                   {Weight::main, true, false, 0, ui.say("screen.key.escape")}))
            asked = ask::CloseMessage{};
        if (ui.pressed({key::escape}) && place.keys_walk) asked = ask::CloseMessage{};
    }
    panel_end(ui);
    ui.over = false;
    return asked;
}

std::optional<Request> draw_screens(const State& state, Views& views, const std::vector<Spoken>& spoken,
                                    const Marks& marks, Ui& ui) {
    const Place place = place_of(state);
    ui.free_keys = !ImGui::GetIO().WantTextInput;
    if (over_picture(place) && (state.practice || (place == Place::wall && state.crew->item()) || (place == Place::looks && state.looks->look())))
        draw_marks(ui, marks, views.panels);
    else if (views.sheet != Sheet::none || place == Place::house || place == Place::wall || place == Place::looks || place == Place::way || place == Place::crew || place == Place::seat || place == Place::ladder || place == Place::sign || place == Place::growing)
        ImGui::GetBackgroundDrawList()->AddRectFilled({0, 0}, ImGui::GetIO().DisplaySize, ui.colours().raised);
    std::optional<Request> asked = asked_by_keys(state, views, ui);
    std::optional<Request> drawn;
    if (views.sheet == Sheet::find)
        drawn = sheet_find(state, views, ui);
    else if (views.sheet == Sheet::keys)
        sheet_keys(state, views, ui);
    else if (views.sheet == Sheet::words)
        sheet_words(views, ui);
    else
        switch (place) {
        case Place::safety: drawn = screen_safety(state, views, spoken, ui); break;
        case Place::home: drawn = screen_home(state, views, ui); break;
        case Place::settings: drawn = screen_settings(state, views, spoken, ui); break;
        case Place::row: drawn = screen_row(state, views, ui); break;
        case Place::look: drawn = screen_look_back(state, views, ui); break;
        case Place::watch: drawn = screen_watch(state, views, ui); break;
        case Place::drill: drawn = screen_drill(state, views, ui); break;
        case Place::buds: drawn = screen_buds(state, views, ui); break;
        case Place::questions: drawn = screen_questions(state, views, ui); break;
        case Place::house: drawn = screen_house(state, views, ui); break;
        case Place::wall: drawn = screen_wall(state, views, ui); break;
        case Place::weigh: drawn = screen_weigh(state, views, ui); break;
        case Place::book: drawn = screen_book(state, views, ui); break;
        case Place::crew: drawn = screen_crew(state, views, ui); break;
        case Place::seat: drawn = screen_seat(state, views, ui); break;
        case Place::ladder: drawn = screen_ladder(state, views, ui); break;
        case Place::growing: drawn = screen_growing(state, views, ui); break;
        case Place::sign: drawn = screen_sign(state, views, ui); break;
        case Place::way: drawn = screen_way(state, views, ui); break;
        case Place::looks: drawn = screen_looks(state, views, ui); break;
        case Place::two: drawn = screen_two(state, views, ui); break;
        }
    views.panels = std::move(ui.boxes);
    ui.boxes.clear();
    return asked ? asked : drawn;
}

} // namespace spurwright::ui
