// Weights keyed one vine after another, in walking order, by the keyboard alone.
#include <algorithm>
#include <utility>

#include "render/ui/book_parts.h"
#include "render/ui/panel.h"
#include "scenarios/commands/spread_object.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using practice::BookDesk;
using practice::WeightUnit;
using reference_vines::ReferenceVine;
using reference_vines::Weighing;

std::string place_text(const Ui& ui, const ReferenceVine& vine) {
    const std::string place = vine.place ? std::to_string(*vine.place) : "-";
    return ui.say("screen.book.vine", {{"tag", vine.tag}, {"row", vine.row.empty() ? std::string("-") : vine.row}, {"place", place}});
}

// What stands in the book of this vine fills the fields; a vine keyed before is gone over by Enter.
void fill(BookView& view, const BookDesk& book) {
    if (view.keyed_at == book.at() && view.entered == book.entered() && view.winter == book.winter()) return;
    view.keyed_at = book.at();
    view.entered = book.entered();
    view.winter = book.winter();
    const auto number = [](const std::optional<std::int64_t>& n) { return n ? std::to_string(*n) : std::string(); };
    view.weight = view.canes = view.buds = view.crop = view.note = {};
    if (const ReferenceVine* vine = book.vine())
        if (const Weighing* w = BookDesk::weighed(*vine, book.winter())) {
            view.weight.text = w->typed;
            view.canes.text = number(w->canes);
            view.buds.text = number(w->buds);
            view.crop.text = w->crop_typed;
            view.note.text = w->note;
        }
    view.weight.focus = true;
}

Asked odd_question(const BookDesk& book, BookView& view, Ui& ui) {
    Asked asked;
    const auto& odd = *book.odd();
    strong_text(ui, ui.say(odd.of_vine ? "screen.book.odd-vine" : "screen.book.odd-block", {{"weight", odd.prunings}, {"usual", odd.usual}, {"winter", std::to_string(odd.winter)}}));
    const std::string mend = ui.say("screen.book.odd-mend"), keep = ui.say("screen.book.odd-keep"), keep_key = key_text(ui, KeyPress{key::enter, true});
    if (button(ui, "book.odd-mend", mend, {Weight::main, true, false, 0, ui.say("screen.key.escape")}) || ui.pressed({key::escape})) {
        asked = ask::BookDo{desk::Keep{false}};
        view.weight.focus = true;
    }
    flow(ui, button_width(ui, keep, keep_key));
    if (button(ui, "book.odd-keep", keep, {Weight::plain, true, false, 0, keep_key}) || ui.pressed({key::enter, true})) asked = ask::BookDo{desk::Keep{true}};
    return asked;
}

Asked fields(const BookDesk& book, BookView& view, Ui& ui) {
    Asked asked;
    ImGui::PushID(static_cast<int>(book.at()));  // the field of another vine is another field
    bool entered = false;
    const auto one = [&](std::string_view name, std::string_view label, Field& field, float em) {
        entered |= text_field(ui, name, {}, field, ui.em() * em, true);
        const std::string words = ui.say(label);
        flow(ui, text_size(ui, words, 0).x);
        row_text(ui, words, true);
    };
    one("book.weight", "screen.book.weight-hint", view.weight, 10);
    one("book.canes", "screen.book.canes-hint", view.canes, 10);
    one("book.buds", "screen.book.buds-hint", view.buds, 10);
    one("book.crop", "screen.book.crop-hint", view.crop, 10);
    one("book.note", "screen.book.note-hint", view.note, 18);
    ImGui::PopID();
    const std::string enter = ui.say("screen.book.enter"), hint = ui.say("screen.key.enter");
    if (button(ui, "book.enter", enter, {Weight::main, true, false, 0, hint}) || entered)
        asked = ask::BookDo{desk::Enter{view.weight.text, view.canes.text, view.buds.text, view.crop.text, view.note.text}};
    if (ui.pressed({key::down})) asked = ask::BookDo{desk::Walk{1}};
    if (ui.pressed({key::up})) asked = ask::BookDo{desk::Walk{-1}};
    return asked;
}

Asked units(const BookDesk& book, Ui& ui) {
    Asked asked;
    row_text(ui, ui.say("screen.book.unit"));
    for (const WeightUnit unit : {WeightUnit::kg, WeightUnit::g, WeightUnit::lb}) {
        const std::string name(word_of(unit));
        flow(ui, choice_width(ui, name));
        if (choice(ui, "book.unit." + name, name, book.unit() == unit)) asked = ask::BookDo{desk::Unit{unit}};
    }
    return asked;
}

Asked new_vine(Views& views, Ui& ui) {
    BookView& view = views.book;
    if (!fold(ui, "book.new-vine", ui.say("screen.book.new-vine"), view.more_open)) return {};
    bool entered = false;
    const std::pair<std::string_view, Field*> asked_for[] = {{"tag", &view.new_tag}, {"row", &view.new_row}, {"place", &view.new_place}};
    for (const auto& [name, field] : asked_for) {
        const std::string hint = ui.say("screen.book." + std::string(name) + "-hint");
        entered |= text_field(ui, "book.new-" + std::string(name), hint, *field, std::max(ui.em() * 9, text_size(ui, hint, 0).x + 3 * ui.grid.gap()));
    }
    const bool typed = !view.new_tag.text.empty();
    if (!(button(ui, "book.add-vine", ui.say("screen.book.add-vine"), {Weight::plain, typed, false, 0, {}}) || entered) || !typed) return {};
    return ask::BookDo{desk::NewVine{view.new_tag.text, view.new_row.text, view.new_place.text}};
}

std::string winters_text(const Ui& ui, const ReferenceVine& vine, int but) {
    std::string text;
    for (const Weighing& w : vine.winters)
        if (w.winter != but) text += (text.empty() ? "" : "  ·  ") + std::to_string(w.winter) + "  " + commands::kg_column(w.prunings.count / 1e6, ui.words);
    return text.empty() ? ui.say("screen.book.never-weighed") : ui.say("screen.book.weighed-before", {{"text", text}});
}

Asked entry_card(const State& state, Views& views, Ui& ui) {
    const BookDesk& book = *state.book;
    Asked asked;
    if (ImGui::IsWindowAppearing()) views.book.weight.focus = true;  // back from another page
    take(asked, book_ways(state, views, ui));
    book_head(state, ui);
    take(asked, command_button(ui, state, views, "book", "book-earlier", Weight::plain, false));
    take(asked, command_button(ui, state, views, "book", "book-later", Weight::plain, false, true));
    row_text(ui, ui.say("screen.book.winter", {{"winter", std::to_string(book.winter())}, {"n", counted(book.keyed())}, {"of", counted(book.open()->vines.size())}}));
    take(asked, units(book, ui));
    rule_line(ui);
    const ReferenceVine* vine = book.vine() ? book.vine() : book.begun_vine();
    if (book.odd()) {
        take(asked, odd_question(book, views.book, ui));
    } else if (vine) {
        strong_text(ui, place_text(ui, *vine));
        text(ui, winters_text(ui, *vine, book.winter()), true);
        take(asked, fields(book, views.book, ui));
        text(ui, ui.say("screen.book.how"), true);
        if (book.vine()) take(asked, command_button(ui, state, views, "book", "book-practise", Weight::plain, true));
    } else {
        strong_text(ui, ui.say(book.open()->vines.empty() ? "screen.book.no-vines" : "screen.book.row-done", {{"n", counted(book.keyed())}, {"of", counted(book.open()->vines.size())}}));
        if (ui.pressed({key::up})) asked = ask::BookDo{desk::Walk{-1}};
    }
    rule_line(ui);
    const std::string hint = ui.say("screen.book.go-to-tag");
    if (text_field(ui, "book.tag", hint, views.book.tag, std::max(ui.em() * 12, text_size(ui, hint, 0).x + 3 * ui.grid.gap())) && !views.book.tag.text.empty()) {
        asked = ask::BookDo{desk::Tag{views.book.tag.text}};
        views.book.tag.text.clear();
    }
    take(asked, new_vine(views, ui));
    take(asked, book_place(state, views, ui));
    book_history(state, views, ui);
    take(asked, book_papers(state, views, ui));
    if (fold(ui, "book.what", ui.say("screen.weigh.what-belongs"), views.shown.why_open)) text(ui, ui.say("book.sheet.what"));
    unchecked_line(ui);
    return asked;
}

// The vines in walking order, each with this winter's weight; the one at hand stands out.
Asked walked(const State& state, BookView& view, Ui& ui) {
    const BookDesk& book = *state.book;
    Asked asked;
    strong_text(ui, ui.say("screen.book.walking-order"));
    const float top = ImGui::GetCursorPosY();
    const auto n = static_cast<int>(book.open()->vines.size());
    ImGuiListClipper clipper;  // of ten thousand vines only those in sight are drawn
    clipper.Begin(n);
    while (clipper.Step())
        for (int row = clipper.DisplayStart; row < clipper.DisplayEnd; ++row) {
            const auto i = static_cast<std::size_t>(row);
            const ReferenceVine& vine = book.open()->vines[i];
            const Weighing* w = BookDesk::weighed(vine, book.winter());
            if (list_row(ui, "book.vine." + std::to_string(i), place_text(ui, vine), i == book.at(), w ? ui.words.measure(w->prunings) : std::string("–"))) asked = ask::BookDo{desk::At{i}};
        }
    if (view.listed_at != book.at() && clipper.ItemsHeight > 0) {
        const float row = top + clipper.ItemsHeight * static_cast<float>(book.at());
        ImGui::SetScrollY(std::max(0.0f, row - ImGui::GetWindowHeight() * 0.4f));
        view.listed_at = book.at();
    }
    return asked;
}

} // namespace

Asked book_entry(const State& state, Views& views, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    fill(views.book, *state.book);
    const bool told = state.shell.message.has_value();  // read and closed, typing goes on where it was
    if (std::exchange(views.book.told, told) && !told) views.book.weight.focus = true;
    Asked asked;
    const bool wide = screen.x >= ui.em() * 56;
    const float margin = ui.grid.half(), list = wide ? std::min(ui.em() * 24, screen.x * 0.34f) : screen.x - 2 * margin;
    PanelPlace card;
    card.x = card.y = margin;
    card.width = wide ? screen.x - list - 3 * margin : list;
    card.most_height = wide ? screen.y - 2 * margin : (screen.y - 3 * margin) * 0.62f;
    card.full_height = true;
    panel_begin(ui, "book-entry", card);
    take(asked, entry_card(state, views, ui));
    panel_end(ui);
    PanelPlace beside;
    beside.x = wide ? screen.x - list - margin : margin;
    beside.y = wide ? margin : card.most_height + 2 * margin;
    beside.width = list;
    beside.most_height = screen.y - beside.y - margin;
    beside.full_height = true;
    beside.keys_walk = false;
    panel_begin(ui, "book-vines", beside);
    take(asked, walked(state, views.book, ui));
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
