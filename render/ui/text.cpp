// Words on a panel, wrapped at its edge.
#include <algorithm>
#include <cfloat>

#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

void written(Ui& ui, const std::string& words, ImU32 ink, ImFont* font) {
    const float height = font->FontSize, wrap = std::max(ImGui::GetContentRegionAvail().x, 1.0f);
    const ImVec2 took = font->CalcTextSizeA(height, FLT_MAX, wrap, words.data(), words.data() + words.size());
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::Dummy({std::min(took.x, wrap), took.y});
    ImGui::GetWindowDrawList()->AddText(font, height, at, ink, words.data(), words.data() + words.size(), wrap);
    record(ui, "", words, at, {at.x + std::min(took.x, wrap) + 1, at.y + took.y}, took.x, false);
}

} // namespace

void text(Ui& ui, const std::string& words, bool soft) {
    written(ui, words, soft ? ui.colours().soft : ui.colours().ink, ui.fonts.body);
}
void strong_text(Ui& ui, const std::string& words) { written(ui, words, ui.colours().ink, ui.fonts.strong); }
void head_text(Ui& ui, const std::string& words) { written(ui, words, ui.colours().ink, ui.fonts.head); }

void row_text(Ui& ui, const std::string& words, bool soft) {
    const float row = ui.grid.row(), wrap = std::max(ImGui::GetContentRegionAvail().x, 1.0f);
    const ImVec2 size = text_size(ui, words, wrap), at = ImGui::GetCursorScreenPos();
    const float height = std::max(row, size.y);
    ImGui::Dummy({std::min(size.x, wrap), height});
    ImGui::GetWindowDrawList()->AddText(ui.fonts.body, ui.em(), {at.x, at.y + (height - size.y) / 2},
                                        soft ? ui.colours().soft : ui.colours().ink, words.data(),
                                        words.data() + words.size(), wrap);
    record(ui, "", words, at, {at.x + std::min(size.x, wrap) + 1, at.y + height}, size.x, false);
}

} // namespace spurwright::ui
