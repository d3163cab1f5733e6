#include "render/ui/room_text.h"

#include <algorithm>
#include <array>
#include <cfloat>

#include "render/ui/broken_lines.h"
#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

constexpr std::array<float, 6> room_steps{1, 0.95f, 0.9f, 0.85f, 0.8f, least_room_share};

const ImFont& font_of(const Ui& ui, RoomLook look) { return look == RoomLook::head ? *ui.fonts.head : look == RoomLook::strong ? *ui.fonts.strong : *ui.fonts.body; }
float size_of(const Ui& ui, RoomLook look, float share) { return font_of(ui, look).FontSize * share; }
float gap_of(float share) { return ImGui::GetStyle().ItemSpacing.y * share; }

} // namespace

float room_height(const Ui& ui, const RoomLines& lines, float wrap, float share) {
    float height = 0;
    for (const RoomLine& line : lines) {
        const ImFont& font = font_of(ui, line.look);
        const float size = size_of(ui, line.look, share);
        const std::string words = broken_lines(font, size, line.words, wrap);
        height += font.CalcTextSizeA(size, FLT_MAX, wrap, words.data(), words.data() + words.size()).y + gap_of(share);
    }
    return height;
}

float room_share(const Ui& ui, const RoomLines& lines, const ImVec2& room) {
    for (const float share : room_steps)
        if (room_height(ui, lines, room.x, share) <= room.y) return share;
    return room_steps.back();
}

void draw_room(Ui& ui, const RoomLines& lines, float share) {
    Ui scaled = ui;
    scaled.grid.em = ui.em() * share;
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {ImGui::GetStyle().ItemSpacing.x, gap_of(share)});
    for (const RoomLine& line : lines) {
        if (line.look == RoomLook::head) head_text(scaled, line.words);
        else if (line.look == RoomLook::strong) strong_text(scaled, line.words);
        else text(scaled, line.words, line.look == RoomLook::soft);
    }
    ImGui::PopStyleVar();
}

} // namespace spurwright::ui
