#include "render/ui/text_table.h"

#include <algorithm>

namespace spurwright::ui {
namespace {

std::string row_in_words(const std::vector<std::string>& head, const std::vector<std::string>& row) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) line += (i ? "  ·  " : "") + head[i] + " " + row[i];
    return line;
}

} // namespace

void text_table(Ui& ui, const std::vector<std::vector<std::string>>& rows, std::size_t texts) {
    if (rows.empty()) return;
    const float between = ui.em() * 1.2f, most_head = ui.em() * 7;  // a long head is wrapped
    std::vector<float> widths(rows.front().size(), 0);
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t i = 0; i < rows[r].size(); ++i) widths[i] = std::max(widths[i], text_size(ui, rows[r][i], r ? 0 : most_head, r == 0).x + 1);
    float whole = -between;
    for (const float width : widths) whole += width + between;
    if (whole > ImGui::GetContentRegionAvail().x) {
        for (std::size_t r = 1; r < rows.size(); ++r) text(ui, row_in_words(rows.front(), rows[r]));
        return;
    }
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        float height = ui.em() * 1.3f;
        for (std::size_t i = 0; i < rows[r].size(); ++i)
            if (r == 0) height = std::max(height, text_size(ui, rows[0][i], most_head, true).y + ui.grid.half());
        float x = at.x;
        std::string line;
        for (std::size_t i = 0; i < rows[r].size(); ++i) {
            const std::string& cell = rows[r][i];
            const ImVec2 size = text_size(ui, cell, r ? 0 : most_head, r == 0);
            const float left = i < texts ? x : x + widths[i] - size.x;
            draw.AddText(r ? ui.fonts.body : ui.fonts.strong, ui.em(), {left, at.y + (r ? 0 : height - size.y - ui.grid.half())}, ui.colours().ink, cell.data(), cell.data() + cell.size(), r ? 0 : most_head + 1);
            x += widths[i] + between;
            line += (i ? "  " : "") + cell;
        }
        ImGui::Dummy({whole, height});
        record(ui, "", line, at, {at.x + whole, at.y + height}, whole, false);
        if (r == 0) draw.AddLine({at.x, at.y + height}, {at.x + whole, at.y + height}, ui.colours().line, 1);
    }
}

} // namespace spurwright::ui
