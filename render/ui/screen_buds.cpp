#include <algorithm>
#include <cmath>

#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"
#include "scenarios/commands/cite.h"
#include "sim/balance/bud_target.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::BudSample;
using practice::OpenedBud;
using practice::SampledCane;

constexpr ImU32 green = colour(0x6E9B3C), brown = colour(0x4A2E1C), scales = colour(0x8A6A4A), wool = colour(0xD8C4A4);

// One of the three within the cut face: green and whole, or brown, shrunken and cracked through.
void draw_primordium(ImDrawList& draw, ImVec2 at, float radius, bool alive) {
    const float r = alive ? radius : radius * 0.82f;
    draw.AddCircleFilled(at, radius + 1, wool, 24);
    draw.AddCircleFilled(at, r, alive ? green : brown, 24);
    if (alive) {
        draw.AddCircle(at, r * 0.55f, colour(0xC9E08F), 20, std::max(1.0f, r * 0.14f));
        return;
    }
    const float s = r * 0.8f, thick = std::max(1.5f, r * 0.16f);
    draw.AddLine({at.x - s, at.y - s * 0.7f}, {at.x + s, at.y + s * 0.7f}, wool, thick);
    draw.AddLine({at.x - s * 0.7f, at.y + s}, {at.x + s * 0.6f, at.y - s}, wool, thick);
}

// The face of a bud cut a third of the way down: the primary in the middle, secondary and tertiary at its sides.
void draw_opened(ImDrawList& draw, ImVec2 from, float width, const OpenedBud& bud) {
    const ImVec2 middle{from.x + width / 2, from.y + width / 2};
    const float r = width * 0.46f;
    draw.AddCircleFilled(middle, r, scales, 36);
    draw.AddCircleFilled(middle, r * 0.88f, wool, 36);
    draw.AddCircle(middle, r, colour(0x2A1D12), 36, 1.5f);
    draw_primordium(draw, {middle.x - r * 0.56f, middle.y + r * 0.16f}, r * 0.25f, bud.secondary);
    draw_primordium(draw, {middle.x + r * 0.56f, middle.y + r * 0.16f}, r * 0.2f, bud.tertiary);
    draw_primordium(draw, {middle.x, middle.y - r * 0.12f}, r * 0.4f, bud.primary);
}

void faces(Ui& ui, const SampledCane& cane) {
    const float room = ImGui::GetContentRegionAvail().x, gap = ui.grid.gap();
    const auto count = static_cast<float>(cane.buds.size());
    const float width = std::min(ui.em() * (ui.narrow() ? 3.4f : 5.4f), (room - gap * (count - 1)) / count);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    for (std::size_t i = 0; i < cane.buds.size(); ++i) {
        const ImVec2 from{at.x + static_cast<float>(i) * (width + gap), at.y};
        draw_opened(draw, from, width, cane.buds[i]);
        record(ui, "buds.face." + std::to_string(i), ui.say("screen.buds.face", {{"n", Count{static_cast<std::int64_t>(i) + 1}}}), from,
               {from.x + width, from.y + width}, 0, false);
    }
    ImGui::Dummy({room, width});
}

Asked count_buttons(Ui& ui, const SampledCane& cane) {
    Asked asked;
    for (int n = 0; n <= static_cast<int>(cane.buds.size()); ++n) {
        const std::string label = std::to_string(n);
        const float width = std::max(ui.grid.row() * 1.3f, button_width(ui, label));
        if (n > 0) flow(ui, width);
        if (button(ui, "buds.dead-" + label, label, {Weight::plain, true, false, width, {}}) || ui.pressed({'0' + n})) asked = ask::SayDead{n};
    }
    return asked;
}

// What a school makes of the share, under its name and with its work.
void method_line(Ui& ui, balance::InjuryMethod method, double share, int target) {
    const auto found = balance::more_for_killed(method, share, target);
    const std::string name = ui.say("screen.buds.method-" + std::string(word_of(method)));
    const bool number = found.advice == balance::Advice::as_usual || found.advice == balance::Advice::leave_more;
    strong_text(ui, name);
    text(ui, ui.say("bud-kill." + std::string(word_of(found.advice))));
    if (number)
        text(ui, ui.say("bud-kill.leave", {{"n", Count{balance::whole_buds(found.buds)}}, {"live", Count{balance::whole_buds(found.live_buds)}}}));
    text(ui, ui.say("buds.source", {{"text", commands::cite_text(found.source)}}), true);
}

void the_end(Ui& ui, const State& state, const BudSample& sample) {
    const int target = state.practice->asked_buds();
    strong_text(ui, ui.say("bud-kill.share", {{"share", PerMille{static_cast<std::int32_t>(std::lround(sample.share() * 1000))}},
                                              {"n", Count{sample.dead()}}, {"of", Count{sample.buds()}}}));
    text(ui, ui.say("screen.buds.counted", {{"n", Count{sample.right()}}, {"of", Count{static_cast<std::int64_t>(sample.canes().size())}}}));
    text(ui, ui.say("screen.buds.truth", {{"share", PerMille{static_cast<std::int32_t>(std::lround(sample.whole_share() * 1000))}}}), true);
    text(ui, ui.say("screen.buds.target", {{"n", Count{target}}}));
    for (const balance::InjuryMethod method : practice::methods_told) method_line(ui, method, sample.share(), target);
    text(ui, ui.say("screen.buds.differ"), true);
    text(ui, ui.say("buds.not-advice"), true);
}

} // namespace

Asked screen_buds(const State& state, Views& views, Ui& ui) {
    const BudSample& sample = *state.practice->buds();
    const SampledCane* cane = sample.here();
    const bool asks = cane && !sample.answered();
    Asked asked;
    shown_panel(ui, "buds");
    if (!asks) take(asked, command_button(ui, state, views, "buds", cane ? "buds-next" : "buds-end", Weight::main, !ui.narrow()));
    if (cane) take(asked, command_button(ui, state, views, "buds", "buds-end", Weight::quiet, !ui.narrow(), !asks));
    take(asked, shown_ways(state, views, ui, "buds"));
    if (cane) {
        const Count at{static_cast<std::int64_t>(sample.at()) + 1}, of{static_cast<std::int64_t>(sample.canes().size())};
        if (!ui.narrow()) text(ui, ui.say("screen.buds.cane", {{"n", at}, {"of", of}}), true);
        faces(ui, *cane);
        if (asks) {
            text(ui, ui.say("screen.buds.asks"));
            take(asked, count_buttons(ui, *cane));
        } else {
            strong_text(ui, ui.say(cane->right() ? "screen.buds.right" : "screen.buds.wrong", {{"n", Count{cane->dead()}}}));
            text(ui, ui.say("screen.buds.how"), true);
        }
    } else {
        the_end(ui, state, sample);
    }
    unchecked_line(ui);
    panel_end(ui);
    take(asked, say_panel(state, ui, 0));
    return asked;
}

} // namespace spurwright::ui
