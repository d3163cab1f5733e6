// What the page of a vine and of a block hold besides weights: where the vine stands, what was changed of it, papers.
#include "render/ui/book_parts.h"
#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using practice::BookDesk;
using reference_vines::ReferenceVine;
using reference_vines::VineChange;
using reference_vines::VineChangeKind;

// What stands in the book fills the fields, whenever it is another vine or stands elsewhere.
void fill_place(BookView& view, const ReferenceVine& vine, bool anew) {
    const reference_vines::TypedPlace typed = reference_vines::typed_place(vine);
    const std::string shown = vine.tag + "|" + typed.row + "|" + typed.place + "|" + typed.latitude + "|" + typed.longitude;
    if (!anew && view.place_shown == shown) return;
    view.place_shown = shown;
    view.row.text = typed.row;
    view.place.text = typed.place;
    view.latitude.text = typed.latitude;
    view.longitude.text = typed.longitude;
}

std::string change_line(const Ui& ui, const VineChange& change) {
    Arguments arguments{{"when", change.when_utc.substr(0, 10)}, {"winter", std::to_string(change.winter)}};
    if (change.before) arguments.push_back({"before", *change.before});
    if (change.after) arguments.push_back({"weight", *change.after});
    const std::string kind = change.kind == VineChangeKind::taken_back && change.winter == 0 ? "gone" : std::string(word_of(change.kind));
    return ui.say("history.vine." + kind, arguments);
}

} // namespace

Asked book_place(const State& state, Views& views, Ui& ui) {
    const ReferenceVine* vine = state.book->vine();
    if (!vine) return {};
    BookView& view = views.book;
    const bool was_open = view.place_open;
    if (!fold(ui, "book.place-fold", ui.say("screen.book.place"), view.place_open)) return {};
    fill_place(view, *vine, !was_open);
    bool entered = false;
    const auto one = [&](std::string_view name, std::string_view label, Field& field) {
        entered |= text_field(ui, name, {}, field, ui.em() * 9, true);
        const std::string words = ui.say(label);
        flow(ui, text_size(ui, words, 0).x);
        row_text(ui, words, true);
    };
    one("book.vine-row", "screen.book.place-row", view.row);
    one("book.vine-place", "screen.book.place-place", view.place);
    one("book.latitude", "screen.book.latitude", view.latitude);
    one("book.longitude", "screen.book.longitude", view.longitude);
    if (button(ui, "book.put-place", ui.say("screen.book.put-place"), {Weight::plain, true, false, 0, {}}) || entered)
        return ask::BookDo{desk::Placed{view.row.text, view.place.text, view.latitude.text, view.longitude.text}};
    return {};
}

void book_history(const State& state, Views& views, Ui& ui) {
    if (!state.book->vine() || !fold(ui, "book.history", ui.say("screen.book.history"), views.book.history_open)) return;
    const auto& all = state.book->history();
    if (all.empty()) text(ui, ui.say("screen.book.no-history"), true);
    for (const VineChange& change : all) {
        const std::string line = change_line(ui, change);
        text(ui, change.undoes ? ui.say("history.vine.by-taking-back", {{"text", line}}) : line, true);
    }
}

Asked book_papers(const State&, Views& views, Ui& ui) {
    BookView& view = views.book;
    if (!fold(ui, "book.papers", ui.say("screen.book.papers"), view.papers_open)) return {};
    const std::string hint = ui.say("screen.book.paper-hint");
    (void)text_field(ui, "book.paper-path", hint, view.paper, std::max(ui.em() * 20, text_size(ui, hint, 0).x + 3 * ui.grid.gap()));
    Asked asked;
    const std::string sheet = ui.say("screen.book.sheet"), plot = ui.say("screen.book.plot-out");
    if (button(ui, "book.sheet", sheet)) asked = ask::BookPaper{ask::PaperKind::sheet, view.paper.text};
    flow(ui, button_width(ui, plot));
    if (button(ui, "book.plot-out", plot)) asked = ask::BookPaper{ask::PaperKind::plot, view.paper.text};
    return asked;
}

} // namespace spurwright::ui
