// The vines of a block as they stand in their rows, each by its size in one winter: colour, shape and number.
#include <array>
#include <cmath>

#include "render/ui/book_parts.h"
#include "scenarios/commands/compare_lines.h"
#include "scenarios/commands/spread_object.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using balance::SizeClass;
using practice::BookDesk;
using reference_vines::ReferenceVine;
using reference_vines::Weighing;

constexpr std::array sizes{SizeClass::small, SizeClass::target, SizeClass::large, SizeClass::excessive};

ImU32 size_colour(SizeClass size) {
    switch (size) {
    case SizeClass::small: return colour(mark::mend_now);
    case SizeClass::target: return colour(mark::spur);
    case SizeClass::large: return colour(mark::stays);
    default: return colour(mark::cut);
    }
}

std::optional<SizeClass> size_in(const BookDesk& book, const ReferenceVine& vine, int winter) {
    const Weighing* w = BookDesk::weighed(vine, winter);
    if (!w) return std::nullopt;
    return balance::size_class(balance::size_of(w->prunings.count / 1e6, in_m(book.open()->block.spacing)), book.wish().sizes);
}

void legend(const BookDesk& book, Ui& ui) {
    std::array<std::int64_t, 4> counts{};
    for (const ReferenceVine& vine : book.open()->vines)
        if (const auto size = size_in(book, vine, book.winter())) ++counts[static_cast<std::size_t>(*size)];
    for (const SizeClass size : sizes) {
        const std::string label = ui.say("screen.book.size-line", {{"text", TextKey{commands::size_key(size)}}, {"n", Count{counts[static_cast<std::size_t>(size)]}}});
        const float before = ui.em() * 1.6f, width = before + text_size(ui, label, 0).x;
        if (size != sizes.front()) flow(ui, width);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float height = ui.em() * 1.4f;
        ImGui::Dummy({width, height});
        ImDrawList& draw = *ImGui::GetWindowDrawList();
        draw_size(draw, {at.x + ui.em() * 0.7f, at.y + height / 2}, ui.em() * 0.5f, size, ui.colours());
        draw.AddText(ui.fonts.body, ui.em(), {at.x + before, at.y + (height - ui.em()) / 2}, ui.colours().ink, label.data(), label.data() + label.size());
        record(ui, "", label, at, {at.x + width + 1, at.y + height}, width, false);
    }
}

bool vine_cell(const BookDesk& book, std::size_t i, float side, Ui& ui) {
    const ReferenceVine& vine = book.open()->vines[i];
    const Weighing* w = BookDesk::weighed(vine, book.winter());
    const std::string name = "book.map." + std::to_string(i), kg = w ? commands::kg_column(w->prunings.count / 1e6, ui.words) : std::string("–");
    const float height = ui.em() * 3.4f;
    const bool pressed = ImGui::InvisibleButton(("###" + name).c_str(), {side, height});
    const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
    if (!ImGui::IsItemVisible()) {
        record(ui, name, vine.tag + " " + kg, from, to, text_size(ui, kg, 0).x, true);
        return pressed;
    }
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    const bool lit = ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    if (lit) draw.AddRect(from, to, ui.colours().ink, corner, 0, 2);
    const ImVec2 middle{(from.x + to.x) / 2, from.y + ui.em() * 0.7f};
    if (const auto size = size_in(book, vine, book.winter())) draw_size(draw, middle, ui.em() * 0.52f, *size, ui.colours());
    else draw.AddLine({middle.x - ui.em() * 0.3f, middle.y}, {middle.x + ui.em() * 0.3f, middle.y}, ui.colours().soft, 2);
    const auto written = [&](const std::string& words, float y, ImU32 ink) {
        const ImVec2 size = text_size(ui, words, 0);
        draw.PushClipRect(from, to, true);
        draw.AddText(ui.fonts.body, ui.em(), {middle.x - size.x / 2, from.y + y}, ink, words.data(), words.data() + words.size());
        draw.PopClipRect();
    };
    written(kg, ui.em() * 1.25f, ui.colours().ink);
    written(vine.tag, ui.em() * 2.25f, ui.colours().soft);
    record(ui, name, vine.tag + " " + kg, from, to, text_size(ui, kg, 0).x, true);
    return pressed || (lit && ImGui::IsItemFocused() && ui.pressed({key::enter}));
}

} // namespace

void draw_size(ImDrawList& draw, ImVec2 m, float r, SizeClass size, const Palette& palette) {
    const ImU32 fill = size_colour(size), edge = palette.ink;
    const float thick = std::max(1.0f, r * 0.16f);
    switch (size) {
    case SizeClass::small:
        draw.AddTriangleFilled({m.x - r, m.y - r * 0.7f}, {m.x + r, m.y - r * 0.7f}, {m.x, m.y + r}, fill);
        draw.AddTriangle({m.x - r, m.y - r * 0.7f}, {m.x + r, m.y - r * 0.7f}, {m.x, m.y + r}, edge, thick);
        return;
    case SizeClass::target:
        draw.AddCircleFilled(m, r, fill, 24);
        draw.AddCircle(m, r, edge, 24, thick);
        return;
    case SizeClass::large:
        draw.AddRectFilled({m.x - r * 0.9f, m.y - r * 0.9f}, {m.x + r * 0.9f, m.y + r * 0.9f}, fill);
        draw.AddRect({m.x - r * 0.9f, m.y - r * 0.9f}, {m.x + r * 0.9f, m.y + r * 0.9f}, edge, 0, 0, thick);
        return;
    case SizeClass::excessive:
        draw.AddQuadFilled({m.x, m.y - r * 1.2f}, {m.x + r * 1.2f, m.y}, {m.x, m.y + r * 1.2f}, {m.x - r * 1.2f, m.y}, fill);
        draw.AddQuad({m.x, m.y - r * 1.2f}, {m.x + r * 1.2f, m.y}, {m.x, m.y + r * 1.2f}, {m.x - r * 1.2f, m.y}, edge, thick);
        return;
    }
}

Asked book_map(const State& state, Views& views, Ui& ui) {
    const BookDesk& book = *state.book;
    Asked asked;
    book_head(state, ui);
    take(asked, command_button(ui, state, views, "book", "book-earlier", Weight::plain, false));
    take(asked, command_button(ui, state, views, "book", "book-later", Weight::plain, false, true));
    row_text(ui, ui.say("screen.book.winter", {{"winter", std::to_string(book.winter())}, {"n", counted(book.keyed())}, {"of", counted(book.open()->vines.size())}}));
    legend(book, ui);
    text(ui, ui.say("screen.book.map-says"), true);
    float widest = ui.em() * 3.2f;
    for (const ReferenceVine& vine : book.open()->vines) widest = std::max(widest, std::min(text_size(ui, vine.tag, 0).x + ui.grid.half(), ui.em() * 8));
    std::optional<std::string> row;
    for (std::size_t i = 0; i < book.open()->vines.size(); ++i) {
        const ReferenceVine& vine = book.open()->vines[i];
        if (!row || *row != vine.row) strong_text(ui, ui.say("screen.book.row-shown", {{"text", vine.row.empty() ? std::string("-") : vine.row}}));
        else flow(ui, widest);
        row = vine.row;
        if (vine_cell(book, i, widest, ui)) asked = ask::BookDo{desk::At{i}};
    }
    take(asked, book_points(state, views, ui));
    return asked;
}

} // namespace spurwright::ui
