// The vines of a block as they stand on the map, north up, each by its size in one winter; a point is put by a press or by
// keys.
#include <algorithm>
#include <cmath>

#include "render/ui/book_parts.h"
#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
namespace desk = practice::desk;
using practice::BookDesk;
using reference_vines::Apart;
using reference_vines::MapPoint;
using reference_vines::ReferenceVine;

// A paper on which metres lie: north up.
struct MapPaper {
    MapPoint middle;
    ImVec2 at, size;
    double north_m = 0, east_m = 0, pixels = 1; // of the middle of the paper from `middle`; a metre's pixels
    ImVec2 seen(const Apart& of) const {
        return {at.x + size.x / 2 + static_cast<float>((of.east_m - east_m) * pixels), at.y + size.y / 2 - static_cast<float>((of.north_m - north_m) * pixels)};
    }
    MapPoint meant(ImVec2 pressed) const {
        const auto metres = [&](float off) { return static_cast<double>(off) / pixels; };
        return reference_vines::moved(middle, {north_m - metres(pressed.y - at.y - size.y / 2), east_m + metres(pressed.x - at.x - size.x / 2)});
    }
};

std::optional<Apart> from_middle(const MapPaper& paper, const ReferenceVine& vine) {
    if (!vine.latitude_e7 || !vine.longitude_e7) return std::nullopt;
    return reference_vines::apart(paper.middle, {*vine.latitude_e7, *vine.longitude_e7});
}

constexpr double least_extent_m = 12, margin_share = 0.12; // our choice

MapPaper map_paper(const BookDesk& book, const MapPoint& middle, ImVec2 at, ImVec2 size) {
    MapPaper paper{middle, at, size};
    double north[2] = {0, 0}, east[2] = {0, 0};
    bool first = true;
    for (const ReferenceVine& vine : book.open()->vines)
        if (const auto point = from_middle(paper, vine)) {
            north[0] = first ? point->north_m : std::min(north[0], point->north_m);
            north[1] = first ? point->north_m : std::max(north[1], point->north_m);
            east[0] = first ? point->east_m : std::min(east[0], point->east_m);
            east[1] = first ? point->east_m : std::max(east[1], point->east_m);
            first = false;
        }
    paper.north_m = (north[0] + north[1]) / 2;
    paper.east_m = (east[0] + east[1]) / 2;
    const double high = std::max(least_extent_m, north[1] - north[0]) * (1 + 2 * margin_share), wide = std::max(least_extent_m, east[1] - east[0]) * (1 + 2 * margin_share);
    paper.pixels = std::min(static_cast<double>(size.x) / wide, static_cast<double>(size.y) / high);
    return paper;
}

// As long as the largest round number of metres that takes a fifth of the paper.
void scale_bar(const MapPaper& paper, Ui& ui) {
    double metres = 1;
    for (const double round : {2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0})
        if (round * paper.pixels < static_cast<double>(paper.size.x) / 5) metres = round;
    const float x = paper.at.x + ui.em(), y = paper.at.y + paper.size.y - ui.em() * 0.8f, to = x + static_cast<float>(metres * paper.pixels);
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddLine({x, y}, {to, y}, ui.colours().ink, 2);
    for (const float end : {x, to}) draw.AddLine({end, y - ui.em() * 0.25f}, {end, y + ui.em() * 0.25f}, ui.colours().ink, 2);
    const std::string words = ui.say("screen.book.scale-bar", {{"n", std::to_string(static_cast<int>(metres))}});
    draw.AddText(ui.fonts.body, ui.em(), {x, y - ui.em() * 1.4f}, ui.colours().soft, words.data(), words.data() + words.size());
    const std::string north = ui.say("screen.book.north");
    const ImVec2 size = text_size(ui, north, 0);
    const float top = paper.at.y + ui.em() * 0.5f, right = paper.at.x + paper.size.x - ui.em() * 1.2f;
    draw.AddTriangleFilled({right, top}, {right - ui.em() * 0.4f, top + ui.em()}, {right + ui.em() * 0.4f, top + ui.em()}, ui.colours().soft);
    draw.AddText(ui.fonts.body, ui.em(), {right - size.x / 2, top + ui.em() * 1.1f}, ui.colours().soft, north.data(), north.data() + north.size());
}

// The vine whose mark lies nearest to what was pressed, within a finger's breadth.
std::optional<std::size_t> vine_pressed(const BookDesk& book, const MapPaper& paper, ImVec2 pressed, float reach) {
    std::optional<std::size_t> nearest;
    for (std::size_t i = 0; i < book.open()->vines.size(); ++i)
        if (const auto point = from_middle(paper, book.open()->vines[i])) {
            const ImVec2 at = paper.seen(*point);
            const float off = std::hypot(at.x - pressed.x, at.y - pressed.y);
            if (off < reach) reach = off, nearest = i;
        }
    return nearest;
}

} // namespace

Asked book_points(const State& state, Views& views, Ui& ui) {
    const BookDesk& book = *state.book;
    rule_line(ui);
    strong_text(ui, ui.say("screen.book.points"));
    const auto middle = reference_vines::middle_point(book.open()->vines);
    if (!middle) {
        text(ui, ui.say("screen.book.no-points"), true);
        return {};
    }
    Asked asked;
    BookView& view = views.book;
    const ReferenceVine* vine = book.vine();
    text(ui, ui.say("screen.book.points-say"), true);
    if (vine && toggle(ui, "book.hand", ui.say("screen.book.put-point", {{"tag", vine->tag}}), view.puts_points)) view.puts_points = !view.puts_points;
    const float width = std::min(ImGui::GetContentRegionAvail().x, ui.em() * 60), height = std::min(ui.em() * 26, ImGui::GetIO().DisplaySize.y * 0.6f);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const MapPaper paper = map_paper(book, *middle, at, {width, height});
    const bool pressed = ImGui::InvisibleButton("###book.points", {width, height});
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    const ImVec2 to{at.x + width, at.y + height};
    draw.AddRectFilled(at, to, ui.colours().raised, corner);
    draw.AddRect(at, to, ImGui::IsItemFocused() && ImGui::GetIO().NavVisible ? ui.colours().ink : ui.colours().line, corner);
    draw.PushClipRect(at, to, true);
    const float reach = ui.em() * 0.42f;
    for (std::size_t i = 0; i < book.open()->vines.size(); ++i) {
        const ReferenceVine& one = book.open()->vines[i];
        const auto point = from_middle(paper, one);
        if (!point) continue;
        const ImVec2 mark = paper.seen(*point);
        const auto* w = BookDesk::weighed(one, book.winter());
        if (w) draw_size(draw, mark, reach, balance::size_class(balance::size_of(w->prunings.count / 1e6, in_m(book.open()->block.spacing)), book.wish().sizes), ui.colours());
        else draw.AddLine({mark.x - reach, mark.y}, {mark.x + reach, mark.y}, ui.colours().soft, 2);
        if (i == book.at()) draw.AddRect({mark.x - reach * 1.9f, mark.y - reach * 1.9f}, {mark.x + reach * 1.9f, mark.y + reach * 1.9f}, ui.colours().ink, 0, 0, 2);
        if (i == book.at() || book.open()->vines.size() <= 40)
            draw.AddText(ui.fonts.body, ui.em(), {mark.x + reach * 2.1f, mark.y - ui.em() / 2}, i == book.at() ? ui.colours().ink : ui.colours().soft, one.tag.data(), one.tag.data() + one.tag.size());
    }
    scale_bar(paper, ui);
    draw.PopClipRect();
    record(ui, "book.points", ui.say("screen.book.points"), at, to, 0, true);
    if (pressed && ImGui::IsMouseReleased(ImGuiMouseButton_Left)) {
        const ImVec2 where = ImGui::GetIO().MousePos;
        if (view.puts_points && vine) {
            const MapPoint meant = paper.meant(where);
            asked = ask::BookDo{desk::PutAt{meant.latitude_e7, meant.longitude_e7}};
        } else if (const auto i = vine_pressed(book, paper, where, ui.em() * 1.2f)) {
            asked = ask::BookDo{desk::At{*i}};
        }
    }
    return asked;
}

} // namespace spurwright::ui
