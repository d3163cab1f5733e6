// Two faces, paper and dusk: one accent, corners of 3 px, a grid in font heights. Contrast ratios are tested.
// Must not know: screens, words.
#pragma once

#include <array>
#include <string_view>

#include <imgui.h>

namespace spurwright::ui {

// sRGB, as ImDrawList takes it.
constexpr ImU32 colour(unsigned rgb, unsigned alpha = 255) {
    return (alpha << 24) | ((rgb & 0xFFu) << 16) | (rgb & 0xFF00u) | ((rgb >> 16) & 0xFFu);
}

enum class Face : unsigned char { paper, dusk };
constexpr auto words_of(Face) { return std::to_array<std::string_view>({"paper", "dusk"}); }

struct Palette {
    ImU32 panel, field, raised, hover, line, ink, soft; // soft: text of second rank, 4.5 : 1 on the panel
    ImU32 accent, on_accent;
    ImU32 backdrop; // behind a sheet that lies over the screen
};
const Palette& palette(Face face);

// Colours of marks: data, the same in both faces, always with a dark or light edge and a second sign.
namespace mark {
inline constexpr unsigned stays = 0x0072B2, spur = 0x009E73, spare = 0x56B4E9, goes = 0xD55E00, cut = 0xCC79A7,
                          hover = 0xF0E442, mend_now = 0xE69F00, next_winter = 0xD55E00, well = 0x9A948A;
}

// The grid at one text size. em: height of body text in pixels.
struct Grid {
    float em = 16;
    float scale = 1; // pixels a design pixel: content scale times text scale
    float gap() const { return snapped(em * 0.5f); }
    float half() const { return snapped(em * 0.25f); }
    float row() const { return snapped(em * 1.9f); } // height of a widget: 24 px and more at scale 1
    static float snapped(float pixels) { return static_cast<float>(static_cast<int>(pixels + 0.5f)); }
};
inline constexpr float em_at_one = 16;
inline constexpr float corner = 3;
inline constexpr float head_size = 1.35f;
// Of the window's height: on the wall a capital letter of body text (0.626 of the font's size as Dear ImGui takes it, in
// DejaVu Sans) is a thirtieth of it, one of a heading a twenty-second: 13 and 18 minutes of arc on a 55-inch screen at 6 m.
inline constexpr float wall_em_share = 1 / (30 * 0.626f);

// Body text, the stronger one and that of headings, all in the atlas of the current context.
struct Fonts {
    ImFont* body = nullptr;
    ImFont* strong = nullptr;
    ImFont* head = nullptr; // strong, head_size em high
};

// Sets Dear ImGui's style from scratch for this face and size; never scales what was scaled before.
void apply(Face face, const Grid& grid);

} // namespace spurwright::ui
