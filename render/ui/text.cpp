// Words on a panel, wrapped at its edge.
#include <algorithm>
#include <cfloat>

#include "render/ui/broken_lines.h"
#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

void written(Ui& ui, const std::string& said, ImU32 ink, ImFont* font) {
    // In a smaller hand than the screen's where the grid handed down is smaller: what a room reads may have to be.
    const float height = font->FontSize * std::min(1.0f, ui.em() / ui.fonts.body->FontSize), wrap = std::max(ImGui::GetContentRegionAvail().x, 1.0f);
    const std::string words = broken_lines(*font, height, said, wrap);
    const ImVec2 took = font->CalcTextSizeA(height, FLT_MAX, wrap, words.data(), words.data() + words.size());
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::Dummy({std::min(took.x, wrap), took.y});
    ImGui::GetWindowDrawList()->AddText(font, height, at, ink, words.data(), words.data() + words.size(), wrap);
    record(ui, "", said, at, {at.x + std::min(took.x, wrap) + 1, at.y + took.y}, took.x, false);
}

} // namespace

std::string broken_lines(const ImFont& font, float height, const std::string& words, float wrap) {
    const auto wide = [&](std::size_t from, std::size_t to) { return font.CalcTextSizeA(height, FLT_MAX, 0, words.data() + from, words.data() + to).x; };
    if (wide(0, words.size()) <= wrap) return words;
    std::string out = words;
    std::size_t line = 0, last = std::string::npos;  // where the line begins; the last space of it that fits
    for (std::size_t at = 0; at <= words.size(); ++at) {
        if (at < words.size() && words[at] != ' ' && words[at] != '\n') continue;
        if (last != std::string::npos && wide(line, at) > wrap) {
            out[last] = '\n';
            line = last + 1;
        }
        last = at;
        if (at < words.size() && words[at] == '\n') line = at + 1, last = std::string::npos;
    }
    return out;
}

void text(Ui& ui, const std::string& words, bool soft) {
    written(ui, words, soft ? ui.colours().soft : ui.colours().ink, ui.fonts.body);
}
void strong_text(Ui& ui, const std::string& words) { written(ui, words, ui.colours().ink, ui.fonts.strong); }
void head_text(Ui& ui, const std::string& words) { written(ui, words, ui.colours().ink, ui.fonts.head); }

void row_text(Ui& ui, const std::string& said, bool soft) {
    const float row = ui.grid.row(), wrap = std::max(ImGui::GetContentRegionAvail().x, 1.0f);
    const std::string words = broken_lines(*ui.fonts.body, ui.em(), said, wrap);
    const ImVec2 size = text_size(ui, words, wrap), at = ImGui::GetCursorScreenPos();
    const float height = std::max(row, size.y);
    ImGui::Dummy({std::min(size.x, wrap), height});
    ImGui::GetWindowDrawList()->AddText(ui.fonts.body, ui.em(), {at.x, at.y + (height - size.y) / 2},
                                        soft ? ui.colours().soft : ui.colours().ink, words.data(),
                                        words.data() + words.size(), wrap);
    record(ui, "", said, at, {at.x + std::min(size.x, wrap) + 1, at.y + height}, size.x, false);
}

} // namespace spurwright::ui
