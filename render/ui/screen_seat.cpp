// Who sits at this window: a number typed or picked from the crew's list, a new one, or nobody. No password, no name asked.
#include <charconv>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/screens.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;

std::string seat_label(const Ui& ui, const records::Person& person) {
    return ui.say(person.name.empty() ? "screen.seat.number" : "screen.seat.number-name", {{"n", Count{person.number}}, {"text", person.name}});
}

// A number in full; nothing else counts, spaces around it left out.
std::optional<std::int64_t> typed_number(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    std::int64_t number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    return read.ec == std::errc{} && read.ptr == text.data() + text.size() ? std::optional(number) : std::nullopt;
}

} // namespace

Asked screen_seat(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const auto& people = state.shell.people;
    panel_begin(ui, "seat", middle_panel(ui, 46));
    head_text(ui, ui.say("screen.seat.title"));
    text(ui, ui.say("screen.seat.says"));
    const bool first = people.empty(); // nobody can have a number yet: what can be done stands first
    if (first) {
        text(ui, ui.say("screen.seat.empty"), true);
        take(asked, command_button(ui, state, views, "seat", "seat-new", Weight::main, false));
    }
    const std::string sit = ui.say("screen.seat.sit"), hint = ui.say("screen.seat.hint");
    const float beside = button_width(ui, sit);
    const bool entered = text_field(ui, "seat.number", hint, views.seat.number, std::max(ImGui::GetContentRegionAvail().x - beside - ui.grid.gap(), text_size(ui, hint, 0).x + 3 * ui.grid.gap()));
    flow(ui, beside);
    const auto typed = typed_number(views.seat.number.text);
    if ((button(ui, "seat.sit", sit, {Weight::plain, typed.has_value(), false, 0, {}}) || entered) && typed) asked = ask::Sits{*typed};
    if (!first) take(asked, command_button(ui, state, views, "seat", "seat-new", Weight::plain, false));
    take(asked, command_button(ui, state, views, "seat", "seat-nobody", Weight::plain, false, !first));
    take(asked, command_button(ui, state, views, "seat", "home", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "seat", "find", Weight::quiet, true, true));
    rule_line(ui);
    for (const records::Person& person : people) {
        const bool here = state.shell.sits && state.shell.sits->number == person.number;
        if (list_row(ui, "seat.person." + std::to_string(person.number), seat_label(ui, person), here, person.crew)) asked = ask::Sits{person.number};
    }
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 2));
    return asked;
}

} // namespace spurwright::ui
