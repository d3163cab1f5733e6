#include "render/ui/piece_tile.h"

#include <algorithm>
#include <cmath>

namespace spurwright::ui {
namespace {

using weighing::Kind;
using weighing::Piece;

constexpr ImU32 new_bark = colour(0xB98F5B), new_shade = colour(0x7E5E38), bud = colour(0x5B3D22), old_bark = colour(0x5C5048), old_shade = colour(0x2E2822),
                peel = colour(0xA39787), dead_bark = colour(0x9A958C), water = colour(0x4C86B8), ground_colour = colour(0xF1ECE1);
constexpr float longest_m = 1.3f;  // fills a tile; longer ones are drawn as long

// Points along a bent stick from one end of the tile to the other, thickness at each.
struct Stick {
    ImVec2 from, to;
    float bend, thick, thin;
    ImVec2 at(float t) const { return {from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t - bend * 4 * t * (1 - t)}; }
    float width(float t) const { return thick + (thin - thick) * t; }
};

void draw_stick(ImDrawList& draw, const Stick& stick, ImU32 bark, ImU32 shade) {
    constexpr int steps = 12;
    for (int i = 0; i < steps; ++i) {
        const float t = static_cast<float>(i) / steps, next = static_cast<float>(i + 1) / steps, w = stick.width(t);
        draw.AddLine(stick.at(t), stick.at(next), shade, w + 1.5f);
        draw.AddLine(stick.at(t), stick.at(next), bark, w);
    }
}

void draw_buds(ImDrawList& draw, const Stick& stick, int joints, float em) {
    const int n = std::clamp(joints, 1, 18);
    for (int i = 0; i < n; ++i) {
        const float t = (static_cast<float>(i) + 0.5f) / static_cast<float>(n), side = i % 2 ? 1.0f : -1.0f;
        const ImVec2 p = stick.at(t);
        draw.AddCircleFilled({p.x, p.y + side * stick.width(t) * 0.6f}, std::max(1.3f, em * 0.09f), bud, 8);
    }
}

// Old bark comes off lengthwise, and the stubs of what was cut before stand on it.
void draw_peel(ImDrawList& draw, const Stick& stick, float em) {
    for (int i = 0; i < 9; ++i) {
        const float t = 0.05f + 0.1f * static_cast<float>(i), off = static_cast<float>(i % 3 - 1) * stick.width(t) * 0.28f;
        const ImVec2 a = stick.at(t), b = stick.at(t + 0.07f);
        draw.AddLine({a.x, a.y + off}, {b.x, b.y + off * 0.6f}, i % 2 ? peel : old_shade, std::max(1.0f, em * 0.06f));
    }
    for (const float t : {0.22f, 0.55f, 0.83f}) {
        const ImVec2 p = stick.at(t);
        draw.AddLine(p, {p.x + em * 0.08f, p.y + stick.width(t) * 0.5f + em * 0.22f}, old_bark, std::max(2.0f, em * 0.16f));
    }
}

void draw_canes_on(ImDrawList& draw, const Stick& stick, std::size_t canes, float em, float height) {
    const auto n = static_cast<int>(std::min<std::size_t>(canes, 12));
    for (int i = 0; i < n; ++i) {
        const float t = (static_cast<float>(i) + 0.7f) / (static_cast<float>(n) + 0.4f);
        const ImVec2 p = stick.at(t);
        const ImVec2 tip{p.x + em * (0.1f + 0.14f * static_cast<float>(i % 3)), p.y - height};
        draw.AddLine(p, tip, new_shade, std::max(2.0f, em * 0.19f));
        draw.AddLine(p, tip, new_bark, std::max(1.3f, em * 0.13f));
    }
}

void draw_laterals(ImDrawList& draw, const Stick& stick, int laterals, float em) {
    for (int i = 0; i < std::min(laterals, 6); ++i) {
        const float t = 0.25f + 0.11f * static_cast<float>(i), side = i % 2 ? 1.0f : -1.0f;
        const ImVec2 p = stick.at(t);
        draw.AddLine(p, {p.x + em * 0.45f, p.y + side * em * 0.4f}, new_bark, std::max(1.2f, em * 0.08f));
    }
}

void draw_bits(ImDrawList& draw, const Box& box, int n, float em) {
    for (int i = 0; i < std::clamp(n, 3, 14); ++i) {
        const float x = box.x0 + box.width() * (0.18f + 0.05f * static_cast<float>((i * 7) % 13)), y = box.y0 + box.height() * (0.3f + 0.05f * static_cast<float>((i * 5) % 9));
        draw.AddLine({x, y}, {x + em * 0.7f, y + em * (0.2f - 0.1f * static_cast<float>(i % 4))}, new_bark, std::max(1.5f, em * 0.12f));
    }
}

void draw_drops(ImDrawList& draw, const Box& box, float em) {
    for (const float t : {0.2f, 0.45f, 0.7f, 0.9f}) {
        const ImVec2 p{box.x0 + box.width() * t, box.y1 - em * 0.3f};
        draw.AddTriangleFilled({p.x - em * 0.11f, p.y}, {p.x + em * 0.11f, p.y}, {p.x, p.y - em * 0.32f}, water);
        draw.AddCircleFilled(p, em * 0.12f, water, 10);
    }
}

void draw_piece(ImDrawList& draw, const Box& box, const Piece& piece, const PieceLook& look, float em) {
    if (piece.kind == Kind::bits) return draw_bits(draw, box, piece.joints, em);
    const float metres = static_cast<float>(in_m(piece.length)), share = std::clamp(metres / longest_m, 0.1f, 1.0f), reach = box.width() * share;
    const float px_a_mm = em * 0.032f, y = box.y0 + box.height() * (look.canes_on ? 0.72f : 0.5f);
    const bool old_wood = piece.kind == Kind::old_wood;
    const int parts = look.is_short ? std::max(1, static_cast<int>(std::ceil(metres / 0.6f))) : 1;
    for (int part = 0; part < parts; ++part) {  // cut to length they lie beside each other
        const float down = parts > 1 ? em * 0.5f * (static_cast<float>(part) - static_cast<float>(parts - 1) / 2) : 0, piece_reach = reach / static_cast<float>(parts);
        const Stick stick{{box.x0 + (box.width() - piece_reach) / 2, y + down},
                          {box.x0 + (box.width() + piece_reach) / 2, y + down},
                          parts > 1 ? 0 : em * 0.12f * share,
                          std::max(2.0f, static_cast<float>(in_mm(piece.thick)) * px_a_mm),
                          std::max(1.5f, static_cast<float>(in_mm(piece.thin)) * px_a_mm)};
        if (look.canes_on) draw_canes_on(draw, stick, look.canes_on, em, box.height() * 0.55f);
        draw_stick(draw, stick, old_wood ? old_bark : piece.dead ? dead_bark : new_bark, old_wood ? old_shade : new_shade);
        if (old_wood) draw_peel(draw, stick, em);
        else draw_buds(draw, stick, std::max(1, piece.joints / parts), em);
        if (!old_wood) draw_laterals(draw, stick, piece.laterals, em);
    }
}

ImVec2 box_corner(const Box& box, bool upper) { return upper ? ImVec2{box.x0, box.y0} : ImVec2{box.x1, box.y1}; }

std::string piece_label(const Ui& ui, const Piece& piece) {
    if (piece.kind == Kind::bits) return ui.say("weigh.piece.bits");
    const std::string length = ui.words.measure(Length{(piece.length.count + 5'000) / 10'000 * 10'000});
    return piece.kind == Kind::sucker ? ui.say("weigh.piece.low", {{"text", length}}) : length;
}

} // namespace

float piece_width(const Ui& ui) { return Grid::snapped(ui.em() * 8); }

bool piece_tile(Ui& ui, std::string_view name, const Piece& piece, const PieceLook& look) {
    const Palette& c = ui.colours();
    const float width = piece_width(ui), gap = ui.grid.half();
    const std::string label = piece_label(ui, piece);
    const ImVec2 text = text_size(ui, label, width - 2 * gap);
    const float drawn = Grid::snapped(ui.em() * (look.canes_on ? 2.6f : 1.7f));
    const bool pressed = ImGui::InvisibleButton(("###" + std::string(name)).c_str(), {width, drawn + text.y + 2 * gap});
    const ImVec2 from = ImGui::GetItemRectMin(), to = ImGui::GetItemRectMax();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRectFilled(from, to, ImGui::IsItemHovered() ? c.hover : c.field, corner);
    draw.AddRect(from, to, look.chosen || ImGui::IsItemHovered() ? c.ink : c.line, corner, 0, look.chosen ? 3.0f : 1.0f);
    const Box box{from.x + gap, from.y + gap, to.x - gap, from.y + gap + drawn};
    draw.AddRectFilled(box_corner(box, true), box_corner(box, false), ground_colour, corner);  // the same in both faces: bark is told by its colour
    draw_piece(draw, box, piece, look, ui.em());
    if (look.wet) draw_drops(draw, box, ui.em());
    draw.AddText(ui.fonts.body, ui.em(), {from.x + (width - text.x) / 2, to.y - gap - text.y}, c.ink, label.data(), label.data() + label.size(), width - 2 * gap);
    record(ui, name, label, from, to, text.x, true);
    return pressed;
}

} // namespace spurwright::ui
