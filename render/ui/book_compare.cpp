// A block's winters side by side: a table, a plot, what changed and with what doubt, buds for the coming winter, a map.
#include <algorithm>
#include <cmath>

#include "render/ui/book_parts.h"
#include "render/ui/text_table.h"
#include "scenarios/commands/compare_lines.h"
#include "scenarios/commands/spread_object.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using practice::BookDesk;
using reference_vines::ReferenceVine;
using reference_vines::Weighing;

constexpr std::size_t most_lines = 300;  // of vines in a plot: more hide each other; our choice

void sentences(Ui& ui, const std::vector<std::string>& all, bool soft = false) {
    for (const std::string& one : all) text(ui, one, soft);
}

// Where the walk by keys halts on a page of text longer than the window: the next part comes to its upper edge.
void key_stop(Ui& ui, std::string_view name) {
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::InvisibleButton(("###stop." + std::string(name)).c_str(), {width, std::max(2.0f, ui.em() * 0.2f)});
    if (!ImGui::IsItemFocused() || !ImGui::GetIO().NavVisible) return;
    ImGui::SetScrollHereY(0.05f);
    const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
    ImGui::GetWindowDrawList()->AddRectFilled(from, {from.x + ui.em() * 2, to.y}, ui.colours().accent);
}

Asked buds_part(const State& state, Views& views, Ui& ui) {
    const auto& suggested = state.book->suggestion();
    if (suggested.vines.empty()) return {};
    key_stop(ui, "buds");
    strong_text(ui, ui.say("screen.book.buds", {{"winter", std::to_string(suggested.winter)}}));
    sentences(ui, commands::suggest_middle(suggested, ui.words));
    text(ui, ui.say("buds.not-advice"), true);
    if (fold(ui, "book.suggested", ui.say("screen.book.by-vine", {{"n", counted(suggested.vines.size())}}), views.book.suggested_open)) text_table(ui, commands::suggest_rows(suggested, std::nullopt, ui.words), 2);
    return {};
}

std::string row_label(const Ui& ui, const BookDesk& book) {
    return book.compared_row() ? ui.say("screen.book.row-shown", {{"text", *book.compared_row()}}) : ui.say("screen.book.all-rows");
}

bool has_rows(const BookDesk& book) {
    const auto& vines = book.open()->vines;
    return std::any_of(vines.begin(), vines.end(), [&](const ReferenceVine& v) { return v.row != vines.front().row; });
}

} // namespace

void draw_winters(Ui& ui, const BookDesk& book) {
    const auto& compared = book.comparison();
    if (compared.winters.empty()) return;
    const Palette& c = ui.colours();
    const float em = ui.em(), room = ImGui::GetContentRegionAvail().x, width = std::min(room, em * 60), height = em * 12, left = em * 3.2f, foot = em * 1.6f;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    double most = 0;
    for (const auto& w : compared.winters) most = std::max(most, w.kg.most);
    const double step = most > 4 ? 1 : most > 1.6 ? 0.5 : 0.2;
    most = std::ceil(most / step) * step;
    const int first = compared.winters.front().winter, last = compared.winters.back().winter;
    const float inner = width - left - em;
    const auto x_of = [&](int winter) { return at.x + left + (first == last ? inner / 2 : em + (inner - 2 * em) * static_cast<float>(winter - first) / static_cast<float>(last - first)); };
    const auto y_of = [&](double kg) { return at.y + em * 0.5f + (height - foot - em * 0.5f) * static_cast<float>(1 - kg / most); };
    for (double kg = 0; kg <= most + 1e-9; kg += step) {
        const float y = y_of(kg);
        draw.AddLine({at.x + left, y}, {at.x + left + inner, y}, c.line, 1);
        const std::string label = commands::kg_column(kg, ui.words, 1);
        const ImVec2 size = text_size(ui, label, 0);
        draw.AddText(ui.fonts.body, em, {at.x + left - size.x - em * 0.3f, y - size.y / 2}, c.soft, label.data(), label.data() + label.size());
    }
    const auto vines_shown = static_cast<std::size_t>(std::max(compared.vines, 1));
    const std::size_t every = (vines_shown + most_lines - 1) / most_lines;
    std::size_t nth = 0;
    for (const ReferenceVine& vine : book.open()->vines) {  // each vine, thin; of very many every so manieth
        if (book.compared_row() && vine.row != *book.compared_row()) continue;
        if (nth++ % every != 0) continue;
        for (std::size_t i = 1; i < vine.winters.size(); ++i)
            draw.AddLine({x_of(vine.winters[i - 1].winter), y_of(vine.winters[i - 1].prunings.count / 1e6)}, {x_of(vine.winters[i].winter), y_of(vine.winters[i].prunings.count / 1e6)}, (c.soft & 0x00FFFFFFu) | 0x50000000u, 1);
    }
    float free_from = at.x;
    for (std::size_t i = 0; i < compared.winters.size(); ++i) {
        const auto& w = compared.winters[i];
        const float x = x_of(w.winter), half = em * 0.32f;
        draw.AddRectFilled({x - half, y_of(w.kg.high)}, {x + half, y_of(w.kg.low)}, (c.accent & 0x00FFFFFFu) | 0x70000000u);
        draw.AddRect({x - half, y_of(w.kg.high)}, {x + half, y_of(w.kg.low)}, c.accent, 0, 0, 1.5f);
        if (i > 0) draw.AddLine({x_of(compared.winters[i - 1].winter), y_of(compared.winters[i - 1].kg.median)}, {x, y_of(w.kg.median)}, c.ink, 2);
        draw.AddCircleFilled({x, y_of(w.kg.median)}, em * 0.24f, c.ink, 16);
        const std::string label = std::to_string(w.winter);
        const ImVec2 size = text_size(ui, label, 0);
        if (x - size.x / 2 < free_from) continue;
        draw.AddText(ui.fonts.body, em, {x - size.x / 2, at.y + height - foot + em * 0.3f}, c.soft, label.data(), label.data() + label.size());
        free_from = x + size.x / 2 + em * 0.4f;
    }
    ImGui::Dummy({width, height});
    record(ui, "book.plot", ui.say("screen.book.plot"), at, {at.x + width, at.y + height}, 0, false);
    text(ui, ui.say("screen.book.plot"), true);
    if (every > 1) text(ui, ui.say("screen.book.plot-some", {{"n", counted(every)}}), true);
}

Asked book_compare(const State& state, Views& views, Ui& ui) {
    const BookDesk& book = *state.book;
    Asked asked;
    book_head(state, ui);
    if (has_rows(book)) {
        row_text(ui, row_label(ui, book));
        const std::string next = ui.say("screen.book.next-row");
        flow(ui, button_width(ui, next));
        if (button(ui, "book.next-row", next)) asked = ask::BookDo{desk::Row{1}};
    }
    const commands::CompareLines lines = commands::compare_lines(book.comparison(), book.wish(), ui.words);
    text(ui, lines.head);
    if (lines.winters.empty()) {
        sentences(ui, lines.about_winters);
        return asked;
    }
    draw_winters(ui, book);
    take(asked, book_papers(state, views, ui));
    key_stop(ui, "winters");
    text_table(ui, lines.winters, 0);
    sentences(ui, lines.about_winters, true);
    if (!lines.changes.empty()) {
        key_stop(ui, "changes");
        strong_text(ui, ui.say("book.changes-head"));
        sentences(ui, lines.changes);
        sentences(ui, lines.about_changes, true);
    }
    if (!lines.rows.empty()) {
        key_stop(ui, "rows");
        strong_text(ui, ui.say("book.rows-head"));
        text_table(ui, lines.rows, 1);
        sentences(ui, lines.about_rows, true);
    }
    rule_line(ui);
    key_stop(ui, "sizes");
    sentences(ui, lines.sizes);
    sentences(ui, lines.relations);
    rule_line(ui);
    take(asked, buds_part(state, views, ui));
    return asked;
}

} // namespace spurwright::ui
