#include "render/ui/theme.h"

namespace spurwright::ui {
namespace {

constexpr Palette paper{colour(0xF4F1EA), colour(0xFCFBF8), colour(0xEAE5DA), colour(0xDFD8C9), colour(0x8D8778),
                        colour(0x22201C), colour(0x5B564D), colour(0x0072B2), colour(0xFFFFFF), colour(0x22201C, 150)};
constexpr Palette dusk{colour(0x1E1F22), colour(0x292B2F), colour(0x2E3035), colour(0x3C3F45), colour(0x7B7E86),
                       colour(0xECE8E0), colour(0xB4AFA6), colour(0x0072B2), colour(0xFFFFFF), colour(0x000000, 170)};

} // namespace

const Palette& palette(Face face) { return face == Face::dusk ? dusk : paper; }

void apply(Face face, const Grid& grid) {
    const Palette& p = palette(face);
    ImGuiStyle style;
    style.WindowPadding = {grid.gap() * 1.5f, grid.gap() * 1.25f};
    style.FramePadding = {grid.gap(), grid.em * 0.42f};
    style.ItemSpacing = {grid.gap(), grid.gap()};
    style.ItemInnerSpacing = {grid.half(), grid.half()};
    style.ScrollbarSize = grid.em * 1.5f;
    style.WindowRounding = style.FrameRounding = style.ChildRounding = style.PopupRounding = style.ScrollbarRounding =
        style.GrabRounding = corner;
    style.WindowBorderSize = 1;
    style.FrameBorderSize = 1;
    style.WindowMinSize = {1, 1};
    ImVec4* colours = style.Colors;
    for (int i = 0; i < ImGuiCol_COUNT; ++i) colours[i] = ImGui::ColorConvertU32ToFloat4(p.ink);
    const auto set = [&](ImGuiCol which, ImU32 value) { colours[which] = ImGui::ColorConvertU32ToFloat4(value); };
    set(ImGuiCol_Text, p.ink);
    set(ImGuiCol_TextDisabled, p.soft);
    set(ImGuiCol_WindowBg, p.panel);
    set(ImGuiCol_ChildBg, colour(0, 0));
    set(ImGuiCol_Border, p.line);
    set(ImGuiCol_BorderShadow, colour(0, 0));
    set(ImGuiCol_FrameBg, p.field);
    set(ImGuiCol_FrameBgHovered, p.field);
    set(ImGuiCol_FrameBgActive, p.field);
    set(ImGuiCol_TextSelectedBg, colour(0x0072B2, 90));
    set(ImGuiCol_ScrollbarBg, p.raised);
    set(ImGuiCol_ScrollbarGrab, p.line);
    set(ImGuiCol_ScrollbarGrabHovered, p.soft);
    set(ImGuiCol_ScrollbarGrabActive, p.ink);
    set(ImGuiCol_NavHighlight, p.ink);
    set(ImGuiCol_ModalWindowDimBg, colour(0, 0));
    set(ImGuiCol_NavWindowingDimBg, colour(0, 0));
    ImGui::GetStyle() = style;
}

} // namespace spurwright::ui
