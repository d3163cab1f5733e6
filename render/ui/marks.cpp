#include "render/ui/marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "render/ui/digit_tags.h"
#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

constexpr ImU32 dark = colour(0x141311), light = colour(0xFFFFFF);

void edged_line(ImDrawList& draw, ImVec2 a, ImVec2 b, ImU32 ink, float thick) {
    draw.AddLine(a, b, ink == dark ? light : dark, thick + 2);
    draw.AddLine(a, b, ink, thick);
}

// Calls `each` at even steps along the whole line, so that corners do not bunch them: where the step is, and where it
// would be `more` further on, no farther than the stretch goes.
template <class Each>
void at_steps(const std::vector<At>& points, float step, float more, const Each& each) {
    float until = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const At a = points[i - 1], b = points[i];
        const float dx = b.x - a.x, dy = b.y - a.y, length = std::sqrt(dx * dx + dy * dy);
        if (!(length > 0)) continue;
        const auto along = [&](float at) { return ImVec2{a.x + dx * at / length, a.y + dy * at / length}; };
        float at = until;
        for (; at < length; at += step) each(along(at), along(std::min(at + more, length)));
        until = at - length;
    }
}

void dotted(ImDrawList& draw, const std::vector<At>& points, float step, float radius) {
    at_steps(points, step, 0, [&](ImVec2 spot, ImVec2) {
        draw.AddCircleFilled(spot, radius + 1.5f, dark, 12);
        draw.AddCircleFilled(spot, radius, light, 12);
    });
}

// Dashes as long as the gaps between them, each straight: `step` from the begin of one to the begin of the next.
void dashed(ImDrawList& draw, const std::vector<At>& points, float step, float thick) {
    at_steps(points, step, step / 2, [&](ImVec2 from, ImVec2 to) { edged_line(draw, from, to, colour(mark::goes), thick); });
}

void ring(ImDrawList& draw, At at, float radius) {
    draw.AddCircle({at.x, at.y}, radius, dark, 32, 4);
    draw.AddCircle({at.x, at.y}, radius, light, 32, 2);
}

void cut_bar(ImDrawList& draw, const CutBar& cut, float px) {
    const ImVec2 at{cut.at.x, cut.at.y};
    if (cut.made) {
        draw.AddCircleFilled(at, 6.5f * px, light, 20);
        draw.AddCircleFilled(at, 5.5f * px, dark, 20);
        draw.AddCircleFilled(at, 4.5f * px, colour(mark::cut), 20);
        draw.AddTriangleFilled(at, {at.x + 7 * px, at.y - 3.5f * px}, {at.x + 7 * px, at.y + 3.5f * px}, dark);
        return;
    }
    const float x = -cut.along.y * cut.half, y = cut.along.x * cut.half;
    edged_line(draw, {at.x - x, at.y - y}, {at.x + x, at.y + y}, colour(mark::goes), 3 * px);
    for (const float way : {-1.0f, 1.0f}) { // serifs that point along what would fall
        const ImVec2 end{at.x + way * x, at.y + way * y};
        edged_line(draw, end, {end.x + cut.along.x * 7 * px, end.y + cut.along.y * 7 * px}, colour(mark::goes), 2 * px);
    }
}

// The wood darkens towards breaking, and strokes across it say the same without colour.
void bent_cane(ImDrawList& draw, const BentCane& cane, float px) {
    constexpr std::array<unsigned, 4> inks{0xC9A26B, mark::hover, mark::mend_now, mark::goes};
    const ImU32 ink = colour(inks[static_cast<std::size_t>(std::clamp(cane.level, 0, 3))]);
    const auto stretch = [&](ImU32 with, float more) {
        for (std::size_t i = 1; i < cane.points.size(); ++i) {
            const ImVec2 a{cane.points[i - 1].x, cane.points[i - 1].y}, b{cane.points[i].x, cane.points[i].y};
            const float thick = std::max(cane.widths[i], 3 * px) + more;
            draw.AddLine(a, b, with, thick);
            draw.AddCircleFilled(b, thick / 2, with, 12);
        }
    };
    stretch(light, 4);
    stretch(dark, 2);
    stretch(ink, 0);
    for (int i = 0; i < cane.level; ++i) {
        const float x = cane.worst.x + (static_cast<float>(i) - static_cast<float>(cane.level - 1) / 2) * 6 * px, y = cane.worst.y;
        edged_line(draw, {x - 4 * px, y + 10 * px}, {x + 4 * px, y - 10 * px}, light, 2 * px);
    }
}

class Labels {
public:
    explicit Labels(Ui& ui) : ui_(ui), screen_(ImGui::GetIO().DisplaySize) {}

    void keep_clear(Box box) { taken_.push_back(box); }

    void draw(ImDrawList& draw, const Label& label, std::size_t number) {
        const float pad = ui_.grid.half(), most = std::min(ui_.em() * 22, screen_.x * 0.6f);
        const ImVec2 first = text_size(ui_, label.first, most, !label.quiet);
        const ImVec2 second = label.second.empty() ? ImVec2{0, 0} : text_size(ui_, label.second, most);
        const float width = std::max(first.x, second.x) + 2 * pad + 1, height = first.y + second.y + 2 * pad;
        const std::optional<Box> free = place(label.at, width, height);
        if (!free && number > 0) return; // no room: the first label alone is always drawn
        const Box box = free ? *free : held({label.at.x, label.at.y}, width, height);
        const Palette& c = ui_.colours();
        const ImVec2 from{box.x0, box.y0}, to{box.x1, box.y1};
        draw.AddLine({label.at.x, label.at.y},
                     {std::clamp(label.at.x, box.x0, box.x1), std::clamp(label.at.y, box.y0, box.y1)}, c.panel, 3);
        draw.AddLine({label.at.x, label.at.y},
                     {std::clamp(label.at.x, box.x0, box.x1), std::clamp(label.at.y, box.y0, box.y1)}, c.ink, 1);
        draw.AddRectFilled(from, to, c.panel, corner);
        draw.AddRect(from, to, c.ink, corner, 0, 1);
        draw.AddText(label.quiet ? ui_.fonts.body : ui_.fonts.strong, ui_.em(), {box.x0 + pad, box.y0 + pad}, c.ink,
                     label.first.data(), label.first.data() + label.first.size(), most);
        if (!label.second.empty())
            draw.AddText(ui_.fonts.body, ui_.em(), {box.x0 + pad, box.y0 + pad + first.y}, c.ink, label.second.data(),
                         label.second.data() + label.second.size(), most);
        taken_.push_back(box);
        if (!ui_.probe) return;
        Probed probed;
        probed.name = "mark.label." + std::to_string(number);
        probed.label = label.first + (label.second.empty() ? "" : "\n" + label.second);
        probed.box = probed.seen = box;
        probed.text_width = std::max(first.x, second.x);
        ui_.probe->add(std::move(probed));
    }

private:
    // Beside and above what it speaks of, else the nearest free place of a few around it.
    std::optional<Box> place(At at, float width, float height) const {
        const float off = ui_.em() * 0.9f;
        for (const float away : {0.0f, 1.2f, 2.4f, 3.6f}) { // heights farther from it
            const std::array<At, 4> corners{{{at.x + off, at.y - off - height * (1 + away)},
                                             {at.x + off, at.y + off + height * away},
                                             {at.x - off - width, at.y - off - height * (1 + away)},
                                             {at.x - off - width, at.y + off + height * away}}};
            for (const At from : corners) {
                const Box box = held(from, width, height);
                if (std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) { return box.meets(other); }))
                    return box;
            }
        }
        return {};
    }
    Box held(At at, float width, float height) const {
        const float x = std::clamp(at.x, 2.0f, std::max(screen_.x - width - 2, 2.0f)),
                    y = std::clamp(at.y, 2.0f, std::max(screen_.y - height - 2, 2.0f));
        return {x, y, x + width, y + height};
    }

    Ui& ui_;
    ImVec2 screen_;
    std::vector<Box> taken_;
};

void tick(Ui& ui, ImDrawList& draw, const BudTick& t, float px) {
    const bool longer = t.number > 0 && t.number % 5 == 0;
    const float length = (longer ? 12.0f : 7.0f) * px;
    const ImVec2 from{t.at.x, t.at.y}, to{t.at.x + t.way.x * length, t.at.y + t.way.y * length};
    edged_line(draw, from, to, light, 2 * px);
    if (!longer) return;
    const std::string number = std::to_string(t.number);
    const ImVec2 size = text_size(ui, number, 0, true);
    const ImVec2 at{to.x + t.way.x * size.x * 0.7f - size.x / 2, to.y + t.way.y * size.y * 0.7f - size.y / 2};
    draw.AddRectFilled({at.x - 3, at.y - 1}, {at.x + size.x + 3, at.y + size.y + 1}, ui.colours().panel, corner);
    draw.AddText(ui.fonts.strong, ui.em(), at, ui.colours().ink, number.c_str());
}

} // namespace

void draw_marks(Ui& ui, const Marks& marks, const std::vector<Box>& panels) {
    ImDrawList& draw = *ImGui::GetBackgroundDrawList();
    const float px = std::max(ui.em() / em_at_one, 1.0f);
    Labels labels(ui);
    for (const Box& panel : panels) labels.keep_clear(panel);
    const auto hidden = [&](At at) {
        return std::any_of(panels.begin(), panels.end(),
                           [&](const Box& b) { return at.x >= b.x0 && at.x < b.x1 && at.y >= b.y0 && at.y < b.y1; });
    };
    std::vector<Label> all = marks.labels;
    for (const TwinLine& twin : marks.twins) {
        dotted(draw, twin.points, 9 * px, 2.2f * px);
        if (!twin.points.empty() && !twin.word.empty()) all.push_back({twin.points.back(), twin.word, {}, true});
    }
    for (const BentCane& cane : marks.bent) bent_cane(draw, cane, px);
    for (const BudTick& t : marks.ticks) tick(ui, draw, t, px);
    for (const GoingLine& line : marks.going) dashed(draw, line.points, 10 * px, 2.5f * px);
    for (const CutBar& cut : marks.cuts) cut_bar(draw, cut, px);
    for (const TieArrow& arrow : marks.arrows) {
        const ImVec2 tip{arrow.at.x + arrow.way.x * 18 * px, arrow.at.y + arrow.way.y * 18 * px};
        edged_line(draw, {arrow.at.x, arrow.at.y}, tip, colour(mark::spare), 3 * px);
        const ImVec2 side{-arrow.way.y * 6 * px, arrow.way.x * 6 * px},
            back{tip.x - arrow.way.x * 8 * px, tip.y - arrow.way.y * 8 * px};
        edged_line(draw, tip, {back.x + side.x, back.y + side.y}, colour(mark::spare), 3 * px);
        edged_line(draw, tip, {back.x - side.x, back.y - side.y}, colour(mark::spare), 3 * px);
    }
    for (const At at : marks.rings) { // a dot says which of the wood within the ring
        ring(draw, at, 22 * px);
        draw.AddCircleFilled({at.x, at.y}, 3.5f * px, dark, 12);
        draw.AddCircleFilled({at.x, at.y}, 2.5f * px, light, 12);
    }
    draw_digit_tags(ui, draw, marks.digits, panels);
    for (const HungTape& hung : marks.tapes) {
        const float grown = hung.current ? 1.35f : 1.0f, length = std::clamp(hung.length, 20.0f, 60.0f) * px * grown,
                    width = 6 * px * grown;
        hang_tape(draw, {hung.at.x, hung.at.y}, length, width, hung.tape, ui.face);
        if (hung.current) ring(draw, hung.at, 10 * px);
        labels.keep_clear({hung.at.x - width, hung.at.y, hung.at.x + width, hung.at.y + length});
        if (!hung.word.empty()) all.push_back({{hung.at.x, hung.at.y + length}, hung.word, {}, true});
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!hidden(all[i].at)) labels.draw(draw, all[i], i);
}

} // namespace spurwright::ui
