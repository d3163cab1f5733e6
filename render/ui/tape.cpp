#include "render/ui/tape.h"

#include <algorithm>
#include <array>

#include "render/ui/widgets.h"

namespace spurwright::ui {
namespace {

constexpr ImU32 dark = colour(0x141311), light = colour(0xFFFFFF);

// A strip with a dark edge inside a light one.
void strip(ImDrawList& draw, ImVec2 from, ImVec2 to, ImU32 fill) {
    draw.AddRectFilled({from.x - 2, from.y - 2}, {to.x + 2, to.y + 2}, light, 1);
    draw.AddRectFilled({from.x - 1, from.y - 1}, {to.x + 1, to.y + 1}, dark, 1);
    draw.AddRectFilled(from, to, fill);
}

void knot(ImDrawList& draw, ImVec2 at, float r, ImU32 fill) {
    const auto diamond = [&](float s, ImU32 c) {
        draw.AddQuadFilled({at.x - s, at.y}, {at.x, at.y - s}, {at.x + s, at.y}, {at.x, at.y + s}, c);
    };
    diamond(r + 3, light);
    diamond(r + 2, dark);
    diamond(r, fill);
}

} // namespace

Tape tape_of(rules::Mend mend) {
    switch (mend) {
    case rules::Mend::now: return {mark::mend_now, TapeEnd::one_knot};
    case rules::Mend::next_winter: return {mark::next_winter, TapeEnd::two_knots};
    case rules::Mend::carried: return {0, TapeEnd::frayed};
    case rules::Mend::nothing: break;
    }
    return {mark::well, TapeEnd::plain};  // none of a tape's own colours: it marks no piece
}

Tape tape_of(Role role) {
    switch (role) {
    case Role::left:
    case Role::right: return {mark::stays, TapeEnd::plain};
    case Role::spur: return {mark::spur, TapeEnd::loop};
    case Role::kicker:
    case Role::spare: return {mark::spare, TapeEnd::tag};
    case Role::remove: return {mark::goes, TapeEnd::bars};
    case Role::none: break;
    }
    return {0xFFFFFF, TapeEnd::plain};
}

void hang_tape(ImDrawList& draw, ImVec2 at, float length, float width, const Tape& tape, Face face) {
    const bool frayed = tape.end == TapeEnd::frayed;
    const ImU32 fill = frayed ? (face == Face::dusk ? light : dark) : colour(tape.rgb);
    const float half = width / 2, end = at.y + length, r = width * 0.85f;
    if (tape.end == TapeEnd::loop) { // tied round and short: a ring
        const float out = width * 1.15f, y = at.y + out;
        for (const auto& [thick, ink] :
             std::array<std::pair<float, ImU32>, 3>{{{half + 5, light}, {half + 3, dark}, {half + 1, fill}}})
            draw.AddCircle({at.x, y}, out, ink, 24, thick);
        strip(draw, {at.x - half * 0.7f, y + out}, {at.x + half * 0.7f, y + out + width * 0.9f}, fill);
        return;
    }
    if (frayed) { // short, its end in three threads
        strip(draw, {at.x - half, at.y}, {at.x + half, at.y + length * 0.55f}, fill);
        for (const float way : {-1.0f, 0.0f, 1.0f}) {
            const ImVec2 from{at.x + way * half * 0.6f, at.y + length * 0.55f},
                to{at.x + way * half * 1.9f, at.y + length * (way == 0 ? 1.0f : 0.85f)};
            draw.AddLine(from, to, face == Face::dusk ? dark : light, 4);
            draw.AddLine(from, to, fill, 2);
        }
        return;
    }
    strip(draw, {at.x - half, at.y}, {at.x + half, end}, fill);
    if (tape.end == TapeEnd::one_knot) knot(draw, {at.x, at.y + length * 0.5f}, r, fill);
    if (tape.end == TapeEnd::two_knots || tape.end == TapeEnd::bars) {
        knot(draw, {at.x, at.y + length * 0.34f}, r, fill);
        if (tape.end == TapeEnd::two_knots) knot(draw, {at.x, at.y + length * 0.7f}, r, fill);
    }
    if (tape.end == TapeEnd::bars) // two cut bars across
        for (const float share : {0.68f, 0.86f}) {
            const float y = at.y + length * share;
            draw.AddLine({at.x - width, y + half}, {at.x + width, y - half}, light, 5);
            draw.AddLine({at.x - width, y + half}, {at.x + width, y - half}, dark, 3);
        }
    if (tape.end == TapeEnd::tag)
        strip(draw, {at.x - width, end - width * 0.4f}, {at.x + width, end + width * 0.9f}, light);
}

void tape_word(Ui& ui, std::string_view name, const Tape& tape, const std::string& word) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float height = ui.grid.row(), before = ui.em() * 1.6f;
    const ImVec2 size = text_size(ui, word, std::max(ImGui::GetContentRegionAvail().x - before, ui.em()), true);
    ImGui::Dummy({before + size.x, std::max(height, size.y)});
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    hang_tape(draw, {at.x + ui.em() * 0.7f, at.y + ui.em() * 0.25f}, height - ui.em() * 0.5f, ui.em() * 0.34f, tape,
              ui.face);
    draw.AddText(ui.fonts.strong, ui.em(), {at.x + before, at.y + (std::max(height, size.y) - size.y) / 2},
                 ui.colours().ink, word.data(), word.data() + word.size(),
                 std::max(ImGui::GetContentRegionAvail().x - before, ui.em()));
    record(ui, name, word, at, {at.x + before + size.x + 1, at.y + std::max(height, size.y)}, size.x + before, false);
}

} // namespace spurwright::ui
