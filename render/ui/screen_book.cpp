#include <algorithm>

#include "render/ui/book_parts.h"
#include "render/ui/panel.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using practice::BookDesk;
using practice::BookPage;

Asked block_list(const State& state, Ui& ui) {
    Asked asked;
    for (std::size_t i = 0; i < state.book->book().size(); ++i) {
        const auto& one = state.book->book()[i];
        int first = 0, last = 0;
        std::int64_t weighings = 0;
        for (const auto& vine : one.vines)
            for (const auto& w : vine.winters) {
                ++weighings;
                first = first ? std::min(first, w.winter) : w.winter;
                last = std::max(last, w.winter);
            }
        const std::string name = one.block.invented ? ui.say("book.invented", {{"block", one.block.name}}) : one.block.name;
        const std::string second = weighings == 0 ? ui.say("screen.book.block-new", {{"n", counted(one.vines.size())}, {"spacing", one.block.spacing}})
                                                  : ui.say("screen.book.block-line", {{"n", counted(one.vines.size())}, {"weighings", Count{weighings}}, {"first", std::to_string(first)}, {"last", std::to_string(last)}, {"spacing", one.block.spacing}});
        if (list_row(ui, "book.block." + std::to_string(i), name, false, second, 0, true)) asked = ask::BookDo{desk::Open{one.block.name}};
    }
    return asked;
}

Asked field_row(Ui& ui, std::string_view name, std::string_view hint, Field& field, float em) {
    (void)text_field(ui, name, ui.say(hint), field, ui.em() * em);
    return {};
}

Asked new_block(Views& views, Ui& ui) {
    BookView& view = views.book;
    if (!fold(ui, "book.new-block", ui.say("screen.book.new-block"), view.new_open)) return {};
    field_row(ui, "book.block-name", "screen.book.block-name", view.name, 20);
    field_row(ui, "book.block-spacing", "screen.book.spacing-hint", view.spacing, 20);
    if (!button(ui, "book.add-block", ui.say("screen.book.add-block"), {Weight::main, !view.name.text.empty() && !view.spacing.text.empty(), false, 0, {}})) return {};
    return ask::BookDo{desk::NewBlock{view.name.text, view.spacing.text}};
}

// What a file would do, before it is done.
void preview(Ui& ui, const practice::FilePreview& file) {
    text(ui, ui.say("screen.book.preview", {{"added", Count{file.counts.added}}, {"changed", Count{file.counts.changed}}, {"same", Count{file.counts.same}}, {"refused", counted(file.refused.size())}}));
    constexpr std::size_t most_told = 12;  // on a screen; our choice
    for (std::size_t i = 0; i < std::min(file.refused.size(), most_told); ++i) {
        const auto& row = file.refused[i];
        text(ui, ui.say("screen.book.refused-line", {{"line", std::to_string(row.line)}, {"column", row.column.empty() ? std::string("-") : row.column}, {"text", ui.words.sentence(row.reason, row.arguments)}}), true);
    }
    for (std::size_t i = 0; i < std::min(file.odd.size(), most_told); ++i) {
        const auto& odd = file.odd[i];
        text(ui, ui.say(odd.of_vine ? "book.odd-vine" : "book.odd-block", {{"line", std::to_string(odd.line)}, {"tag", odd.tag}, {"winter", std::to_string(odd.winter)}, {"weight", odd.prunings}, {"usual", odd.usual}}), true);
    }
}

Asked files(const State& state, Views& views, Ui& ui) {
    if (!fold(ui, "book.files", ui.say("screen.book.files"), views.book.files_open)) return {};
    Asked asked;
    const std::string& path = views.book.path.text;
    field_row(ui, "book.path", "screen.book.path-hint", views.book.path, 30);
    const bool typed = !path.empty(), seen = state.book->preview() && state.book->preview()->path == path;
    const std::string in = ui.say(seen ? "screen.book.take-in" : "screen.book.look-in"), out = ui.say("screen.book.write-out");
    if (button(ui, "book.read-in", in, {seen ? Weight::main : Weight::plain, typed && !state.book->works(), false, 0, {}})) asked = ask::BookDo{desk::ReadIn{path}};
    flow(ui, button_width(ui, out));
    if (button(ui, "book.write-out", out, {Weight::plain, typed, false, 0, {}})) asked = ask::BookDo{desk::WriteOut{path}};
    if (state.book->reading()) text(ui, ui.say("screen.book.reading"));
    if (state.book->taking_in()) text(ui, ui.say("screen.book.taking-in"));
    if (seen) preview(ui, *state.book->preview());
    return asked;
}

} // namespace

Asked book_ways(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const bool keys = !ui.narrow();
    take(asked, command_button(ui, state, views, "book", "home", Weight::quiet, false));
    const std::pair<std::string_view, BookPage> pages[] = {{"book-blocks", BookPage::blocks}, {"book-entry", BookPage::entry}, {"book-compare", BookPage::compare}, {"book-map", BookPage::map}};
    for (const auto& [name, page] : pages) {
        const Command& command = *find_command(name);
        const std::string label = ui.say("screen.do." + std::string(name)), hint = keys ? key_text(ui, name) : std::string();
        flow(ui, button_width(ui, label, hint));
        if (button(ui, "book." + std::string(name), label, {Weight::plain, command.possible(state), state.book->page() == page, 0, hint})) take(asked, command.ask(state, views));
    }
    take(asked, command_button(ui, state, views, "book", "book-undo", Weight::quiet, keys, true));
    take(asked, command_button(ui, state, views, "book", "find", Weight::quiet, keys, true));
    take(asked, command_button(ui, state, views, "book", "keys", Weight::quiet, keys, true));
    return asked;
}

void book_head(const State& state, Ui& ui) {
    const auto& block = state.book->open()->block;
    head_text(ui, block.invented ? ui.say("book.invented", {{"block", block.name}}) : block.name);
    if (block.invented) text(ui, ui.say("book.invented-line"), true);
}

Asked book_blocks(const State& state, Views& views, Ui& ui) {
    Asked asked;
    head_text(ui, ui.say("screen.book.title"));
    text(ui, ui.say("screen.book.says"));
    take(asked, block_list(state, ui));
    if (state.book->book().empty()) text(ui, ui.say("screen.book.empty"), true);
    if (state.book->making_demo()) text(ui, ui.say("screen.book.making-demo"));
    else take(asked, command_button(ui, state, views, "book", "book-demo", state.book->book().empty() ? Weight::main : Weight::plain, false));
    text(ui, ui.say("screen.book.demo-says"), true);
    take(asked, new_block(views, ui));
    take(asked, files(state, views, ui));
    return asked;
}

Asked screen_book(const State& state, Views& views, Ui& ui) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    const BookPage page = state.book->open() ? state.book->page() : BookPage::blocks;
    if (page == BookPage::entry) {
        asked = book_entry(state, views, ui);
    } else {
        PanelPlace place;
        place.width = screen.x;
        place.most_height = screen.y;
        place.full_height = true;
        panel_begin(ui, "book", place);
        const float side = std::max(0.0f, (screen.x - ui.em() * 76) / 2);
        if (side > 0) ImGui::Indent(side);
        take(asked, book_ways(state, views, ui));
        if (page == BookPage::blocks) take(asked, book_blocks(state, views, ui));
        else if (page == BookPage::compare) take(asked, book_compare(state, views, ui));
        else take(asked, book_map(state, views, ui));
        unchecked_line(ui);
        panel_end(ui);
    }
    take(asked, say_panel(state, ui, ui.em() * 4));
    return asked;
}

} // namespace spurwright::ui
