#include "render/ui/digit_tags.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace spurwright::ui {
namespace {

// Plain, a stripe, two stripes, dots, slanted lines, checks: told apart without colour. Colours of Okabe and Ito's palette.
constexpr std::array<unsigned, digit_tapes> tape_colours{0x0072B2, 0xE69F00, 0x009E73, 0xCC79A7, 0x56B4E9, 0xD55E00};
constexpr ImU32 tag_dark = colour(0x141311), tag_light = colour(0xFFFFFF);

float luminance(unsigned rgb) {
    const auto part = [&](int shift) {
        const float v = static_cast<float>((rgb >> shift) & 255) / 255.0f;
        return v <= 0.04045f ? v / 12.92f : std::pow((v + 0.055f) / 1.055f, 2.4f);
    };
    return 0.2126f * part(16) + 0.7152f * part(8) + 0.0722f * part(0);
}

unsigned paler(unsigned rgb) { // half way to white
    return ((rgb >> 1) & 0x7F7F7F) + 0x808080;
}

void pattern(ImDrawList& draw, int digit, const Box& b) {
    const float h = b.y1 - b.y0, t = std::max(1.5f, h * 0.08f);
    draw.PushClipRect({b.x0, b.y0}, {b.x1, b.y1}, true);
    switch (digit) {
    case 2: draw.AddRectFilled({b.x0, b.y0 + h * 0.12f}, {b.x1, b.y0 + h * 0.12f + t}, tag_dark); break;
    case 3:
        draw.AddRectFilled({b.x0, b.y0 + h * 0.1f}, {b.x1, b.y0 + h * 0.1f + t}, tag_dark);
        draw.AddRectFilled({b.x0, b.y1 - h * 0.1f - t}, {b.x1, b.y1 - h * 0.1f}, tag_dark);
        break;
    case 4:
        for (float x = b.x0 + h * 0.15f; x < b.x1; x += h * 0.28f) {
            draw.AddCircleFilled({x, b.y0 + h * 0.14f}, h * 0.06f, tag_dark, 10);
            draw.AddCircleFilled({x, b.y1 - h * 0.14f}, h * 0.06f, tag_dark, 10);
        }
        break;
    case 5:
        for (float x = b.x0 - h; x < b.x1; x += h * 0.3f) {
            draw.AddLine({x, b.y0 + h * 0.2f}, {x + h * 0.2f, b.y0}, tag_dark, t);
            draw.AddLine({x, b.y1}, {x + h * 0.2f, b.y1 - h * 0.2f}, tag_dark, t);
        }
        break;
    case 6:
        for (int i = 0; b.x0 + static_cast<float>(i) * h * 0.16f < b.x1; ++i) {
            const float x = b.x0 + static_cast<float>(i) * h * 0.16f;
            const bool odd = i % 2 != 0;
            draw.AddRectFilled({x, odd ? b.y0 : b.y1 - h * 0.16f}, {x + h * 0.16f, odd ? b.y0 + h * 0.16f : b.y1}, tag_dark);
        }
        break;
    default: break;
    }
    draw.PopClipRect();
}

bool overlap(const Box& a, const Box& b, float apart) {
    return a.x0 < b.x1 + apart && b.x0 < a.x1 + apart && a.y0 < b.y1 + apart && b.y0 < a.y1 + apart;
}

} // namespace

unsigned digit_colour(int digit) { return tape_colours[static_cast<std::size_t>(std::clamp(digit, 1, digit_tapes) - 1)]; }

void digit_tape(Ui& ui, ImDrawList& draw, int digit, const Box& box, bool pale) {
    const unsigned rgb = digit_colour(digit);
    draw.AddRectFilled({box.x0 - 2, box.y0 - 2}, {box.x1 + 2, box.y1 + 2}, tag_light);
    draw.AddRectFilled({box.x0 - 1, box.y0 - 1}, {box.x1 + 1, box.y1 + 1}, tag_dark);
    draw.AddRectFilled({box.x0, box.y0}, {box.x1, box.y1}, pale ? colour(paler(rgb)) : colour(rgb));
    pattern(draw, digit, box);
    const std::string text = std::to_string(digit);
    const float size = (box.y1 - box.y0) * digit_share;
    const ImVec2 wide = ui.fonts.strong->CalcTextSizeA(size, 1e6f, 0, text.c_str());
    const ImVec2 at{(box.x0 + box.x1 - wide.x) / 2, (box.y0 + box.y1 - wide.y) / 2};
    const bool on_dark = !pale && luminance(rgb) < 0.18f; // black or white, whichever stands out more
    const float edge = std::max(1.0f, size * 0.06f);
    for (const auto& [x, y] : {std::pair{-1.0f, 0.0f}, {1.0f, 0.0f}, {0.0f, -1.0f}, {0.0f, 1.0f}})
        draw.AddText(ui.fonts.strong, size, {at.x + x * edge, at.y + y * edge}, on_dark ? tag_dark : tag_light, text.c_str());
    draw.AddText(ui.fonts.strong, size, at, on_dark ? tag_light : tag_dark, text.c_str());
}

std::vector<Box> digit_boxes(const std::vector<DigitTag>& tags, float width, float height, const Box& within,
                             const std::vector<Box>& panels) {
    constexpr float apart = 6;
    std::vector<Box> boxes;
    const auto held = [&](float x, float y) {
        x = std::clamp(x, within.x0, std::max(within.x0, within.x1 - width));
        y = std::clamp(y, within.y0, std::max(within.y0, within.y1 - height));
        return Box{x, y, x + width, y + height};
    };
    const auto free = [&](const Box& box) {
        return std::none_of(boxes.begin(), boxes.end(), [&](const Box& b) { return overlap(box, b, apart); }) &&
               std::none_of(panels.begin(), panels.end(), [&](const Box& b) { return overlap(box, b, 0); });
    };
    for (const DigitTag& tag : tags) {
        // Outward in rings from just above the place; the first free stand wins, and the place itself stays seen.
        Box found = held(tag.at.x - width / 2, tag.at.y - height * 1.6f);
        bool done = false;
        for (int ring = 0; ring < 14 && !done; ++ring)
            for (int step = 0; step < (ring == 0 ? 1 : 8 * ring) && !done; ++step) {
                const float turn = 6.2831853f * static_cast<float>(step) / static_cast<float>(std::max(1, 8 * ring));
                const float r = static_cast<float>(ring) * height * 0.6f;
                const Box box = held(tag.at.x - width / 2 + r * std::sin(turn), tag.at.y - height * 1.6f - r * std::cos(turn));
                const bool over_place = tag.at.x > box.x0 - 4 && tag.at.x < box.x1 + 4 && tag.at.y > box.y0 - 4 && tag.at.y < box.y1 + 4;
                if (over_place || !free(box)) continue;
                found = box;
                done = true;
            }
        boxes.push_back(found);
    }
    return boxes;
}

void draw_digit_tags(Ui& ui, ImDrawList& draw, const std::vector<DigitTag>& tags, const std::vector<Box>& panels) {
    if (tags.empty()) return;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const float height = ui.em() * tag_height_em, width = height * 1.35f, votes_size = ui.em() * 0.8f;
    // Votes stand under the tape they belong to: room for them is kept with it.
    float votes_wide = 0;
    for (const DigitTag& tag : tags) votes_wide = std::max(votes_wide, tag.votes.empty() ? 0.0f : ui.fonts.strong->CalcTextSizeA(votes_size, 1e6f, 0, tag.votes.c_str()).x + 8);
    std::vector<Box> boxes = digit_boxes(tags, std::max(width, votes_wide), height + (votes_wide > 0 ? votes_size * 1.3f : 0), {8, 8, screen.x - 8, screen.y - 8}, panels);
    for (Box& box : boxes) {
        box.x1 = box.x0 + width;
        box.y1 = box.y0 + height;
    }
    for (std::size_t i = 0; i < tags.size(); ++i) {
        const ImVec2 place{tags[i].at.x, tags[i].at.y};
        const ImVec2 from{std::clamp(place.x, boxes[i].x0, boxes[i].x1), std::clamp(place.y, boxes[i].y0, boxes[i].y1)};
        draw.AddLine(from, place, tag_light, 5);
        draw.AddLine(from, place, tag_dark, 2.5f);
        draw.AddCircleFilled(place, 5.5f, tag_light, 16);
        draw.AddCircleFilled(place, 4, tag_dark, 16);
    }
    for (std::size_t i = 0; i < tags.size(); ++i) {
        const Box& box = boxes[i];
        if (tags[i].right) {
            draw.AddRect({box.x0 - 8, box.y0 - 8}, {box.x1 + 8, box.y1 + 8}, tag_dark, 4, 0, 7);
            draw.AddRect({box.x0 - 8, box.y0 - 8}, {box.x1 + 8, box.y1 + 8}, tag_light, 4, 0, 3);
        }
        digit_tape(ui, draw, tags[i].digit, box, tags[i].wrong);
        if (tags[i].right) { // a tick, drawn: no font need have it
            const float h = box.y1 - box.y0, x = box.x1 + 14, y = box.y0 + h * 0.55f;
            for (const auto& [ink, thick] : {std::pair{tag_light, 9.0f}, {tag_dark, 5.0f}}) {
                draw.AddLine({x, y}, {x + h * 0.22f, y + h * 0.28f}, ink, thick);
                draw.AddLine({x + h * 0.22f, y + h * 0.28f}, {x + h * 0.6f, y - h * 0.35f}, ink, thick);
            }
        }
        if (!tags[i].votes.empty()) {
            const ImVec2 wide = ui.fonts.strong->CalcTextSizeA(votes_size, 1e6f, 0, tags[i].votes.c_str());
            const ImVec2 at{box.x0, box.y1 + 6};
            draw.AddRectFilled({at.x - 4, at.y - 2}, {at.x + wide.x + 4, at.y + wide.y + 2}, ui.colours().panel, corner);
            draw.AddText(ui.fonts.strong, votes_size, at, ui.colours().ink, tags[i].votes.c_str());
        }
        if (!ui.probe) continue;
        Probed probed;
        probed.name = "mark.digit." + std::to_string(tags[i].digit);
        probed.label = std::to_string(tags[i].digit);
        probed.box = probed.seen = box;
        ui.probe->add(std::move(probed));
    }
}

} // namespace spurwright::ui
