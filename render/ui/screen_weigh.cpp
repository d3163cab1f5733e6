// The brush sorted into the bundle, hung on the scale and written down; then what was wrong.
#include <algorithm>
#include <utility>

#include "render/ui/asked.h"
#include "render/ui/panel.h"
#include "render/ui/piece_tile.h"
#include "render/ui/screens.h"
#include "render/ui/shown_parts.h"
#include "render/ui/weighed_part.h"
#include "sim/rules/rule_list.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using weighing::Deed;
using weighing::Exercise;
using weighing::Lies;

constexpr ImU32 steel = colour(0x8C9196), dark_steel = colour(0x50555A), string_brown = colour(0x8A6A3C);

Asked pieces_in(const State& state, Views& views, Ui& ui, Lies place) {
    const Exercise& exercise = *state.weighing;
    Asked asked;
    std::size_t shown = 0;
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i)
        shown += exercise.lies(i) == place && !exercise.still_on(i);
    if (place == Lies::wires && shown == 0) return {};
    strong_text(ui, ui.say("screen.weigh." + std::string(word_of(place)), {{"n", counted(shown)}}));
    bool first = true;
    for (std::size_t i = 0; i < exercise.pieces().size(); ++i) {
        if (exercise.lies(i) != place || exercise.still_on(i)) continue;
        if (!first) flow(ui, piece_width(ui));
        first = false;
        const std::string name = "weigh.piece." + std::to_string(i);
        PieceLook look{exercise.canes_on(i), !exercise.is_long(i) && exercise.pieces()[i].length > weighing::bundle_length, exercise.wet(), views.weigh.at == i};
        ImGui::BeginGroup();
        if (piece_tile(ui, name, exercise.pieces()[i], look)) {
            views.weigh.at = i;
            asked = ask::WeighDo{{place == Lies::bundle ? Deed::put_back : Deed::take, i}};
        }
        if (look.canes_on > 0 && !exercise.written() &&
            button(ui, "weigh.strip." + std::to_string(i), ui.say("screen.weigh.strip", {{"n", counted(look.canes_on)}}), {Weight::plain, !exercise.tied(), false, piece_width(ui), {}})) {
            views.weigh.at = i;
            asked = ask::WeighDo{{Deed::strip, i}};
        }
        ImGui::EndGroup();
        if (views.weigh.at == i && std::exchange(views.weigh.walked, false)) ImGui::SetScrollHereY(0.5f);
    }
    return asked;
}

// A hanging scale: its number, its strap, and the bundle where it hangs.
void draw_scale(Ui& ui, const Exercise& exercise) {
    const float em = ui.em(), room = ImGui::GetContentRegionAvail().x, width = std::min(em * 11, room), height = em * 8.6f;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    const float x = at.x + width / 2, box_top = at.y + em * 0.9f, box_foot = at.y + em * 3.9f;
    draw.AddLine({x, at.y}, {x, box_top}, dark_steel, em * 0.2f);
    draw.AddRectFilled({x - em * 3.4f, box_top}, {x + em * 3.4f, box_foot}, steel, corner * 2);
    draw.AddRect({x - em * 3.4f, box_top}, {x + em * 3.4f, box_foot}, dark_steel, corner * 2, 0, 2);
    draw.AddRectFilled({x - em * 2.9f, box_top + em * 0.5f}, {x + em * 2.9f, box_foot - em * 0.5f}, colour(0xDDE6D2), corner);
    const std::string shown = exercise.shown_text() + " " + std::string(word_of(exercise.unit()));
    ImFont* font = ui.fonts.head;
    const ImVec2 size = font->CalcTextSizeA(font->FontSize, 1e6f, 0, shown.data(), shown.data() + shown.size());
    draw.AddText(font, font->FontSize, {x - size.x / 2, (box_top + box_foot - size.y) / 2}, colour(0x1B2118), shown.data(), shown.data() + shown.size());
    const ImVec2 hook{x, box_foot + em * 0.5f};
    draw.AddLine({x, box_foot}, hook, dark_steel, em * 0.16f);
    draw.AddBezierCubic(hook, {x + em * 0.7f, hook.y + em * 0.1f}, {x + em * 0.5f, hook.y + em * 0.9f}, {x - em * 0.1f, hook.y + em * 0.7f}, dark_steel, em * 0.16f);
    const float strap_foot = hook.y + em * 2.4f;  // the strap hangs on it all the time
    draw.AddBezierCubic({x, hook.y + em * 0.6f}, {x - em * 1.6f, hook.y + em * 1.2f}, {x - em * 1.5f, strap_foot}, {x, strap_foot}, string_brown, em * 0.22f);
    draw.AddBezierCubic({x, hook.y + em * 0.6f}, {x + em * 1.6f, hook.y + em * 1.2f}, {x + em * 1.5f, strap_foot}, {x, strap_foot}, string_brown, em * 0.22f);
    if (exercise.hangs()) {
        for (int i = 0; i < 9; ++i) {
            const float y = strap_foot - em * 0.9f + em * 0.16f * static_cast<float>(i), out = em * (4.3f + 0.25f * static_cast<float>(i % 3));
            draw.AddLine({x - out, y}, {x + out - em * 0.3f, y + em * 0.05f * static_cast<float>(i % 2)}, i % 2 ? colour(0xB98F5B) : colour(0x8E6B40), em * 0.22f);
        }
        for (const float dx : {-2.0f, 2.0f}) draw.AddRectFilled({x + dx * em - em * 0.15f, strap_foot - em * 1.15f}, {x + dx * em + em * 0.15f, strap_foot + em * 0.6f}, string_brown);
    }
    ImGui::Dummy({width, height});
    record(ui, "weigh.shown", shown, {at.x, at.y}, {at.x + width, at.y + height}, size.x, false);
}

Asked bundle_buttons(const State& state, Views& views, Ui& ui) {
    const Exercise& exercise = *state.weighing;
    Asked asked;
    const auto one = [&](std::string_view name, bool main, bool beside) {
        take(asked, command_button(ui, state, views, "weigh", name, main ? Weight::main : Weight::plain, !ui.narrow(), beside));
    };
    const bool tied = exercise.tied(), hangs = exercise.hangs(), any = exercise.bundle_size() > 0;
    if (!tied) {
        one("weigh-shorten", any && exercise.has_long(), false);
        one("weigh-tie", any && !exercise.has_long(), true);
    } else if (!hangs) {
        one("weigh-untie", false, false);
    }
    if (!hangs) one("weigh-hang", tied, tied);
    else one("weigh-down", false, false);
    one("weigh-zero", false, true);
    one("weigh-unit", false, true);
    if (exercise.wet() && !hangs) one("weigh-dry", false, true);
    return asked;
}

Asked writing(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const bool hangs = state.weighing->hangs();
    strong_text(ui, ui.say("screen.weigh.write"));
    if (!hangs) {
        text(ui, ui.say("screen.weigh.hang-first"), true);
        return {};
    }
    const std::string label = ui.say("screen.do.weigh-written");
    const float beside = text_size(ui, label, 0, true).x + 2 * ui.grid.gap() + 2, wide = ImGui::GetContentRegionAvail().x;
    const std::string hint = ui.say("screen.weigh.weight-hint");
    const float least = text_size(ui, hint, 0).x + 3 * ui.grid.gap(), field = wide - beside - ui.grid.gap();
    const bool entered = text_field(ui, "weigh.weight", hint, views.weigh.weight, field >= least ? field : wide);
    flow(ui, beside);
    const bool typed = !views.weigh.weight.text.empty();
    if ((button(ui, "weigh.written", label, {Weight::main, typed, false, 0, {}}) || entered) && typed)
        asked = ask::WeighWrite{views.weigh.weight.text, views.weigh.noted_wet};
    if (toggle(ui, "weigh.noted-wet", ui.say("screen.weigh.noted-wet"), views.weigh.noted_wet)) views.weigh.noted_wet = !views.weigh.noted_wet;
    return asked;
}

Asked scale_panel(const State& state, Views& views, Ui& ui) {
    const Exercise& exercise = *state.weighing;
    Asked asked;
    take(asked, command_button(ui, state, views, "weigh", "weigh-close", Weight::quiet, true));
    take(asked, command_button(ui, state, views, "weigh", "weigh-undo", Weight::quiet, !ui.narrow(), true));
    take(asked, command_button(ui, state, views, "weigh", "weigh-redo", Weight::quiet, !ui.narrow(), true));
    take(asked, command_button(ui, state, views, "weigh", "find", Weight::quiet, false, true));
    take(asked, command_button(ui, state, views, "weigh", "keys", Weight::quiet, true, true));
    if (exercise.written()) {
        weighed_part(ui, *exercise.verdict());
        take(asked, command_button(ui, state, views, "weigh", "weigh-again", Weight::plain, true));
        take(asked, command_button(ui, state, views, "weigh", "weigh-next-vine", Weight::main, true, true));
        if (fold(ui, "weigh.why", ui.say("screen.look.why"), views.shown.why_open))
            shown_sources(ui, rules::rule_of(rules::RuleName::prunings_weighed), Status::choice);
    } else {
        draw_scale(ui, exercise);
        take(asked, bundle_buttons(state, views, ui));
        rule_line(ui);
        take(asked, writing(state, views, ui));
        rule_line(ui);
        text(ui, ui.say(exercise.wet() ? "screen.weigh.wet" : "screen.weigh.dry"));
        if (fold(ui, "weigh.why", ui.say("screen.weigh.what-belongs"), views.shown.why_open)) text(ui, ui.say("book.sheet.what"));
    }
    unchecked_line(ui);
    return asked;
}

} // namespace

Asked screen_weigh(const State& state, Views& views, Ui& ui) {
    const Exercise& exercise = *state.weighing;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    if (!exercise.pieces().empty()) views.weigh.at = std::min(views.weigh.at, exercise.pieces().size() - 1);
    Asked asked;
    const bool wide = screen.x >= ui.em() * 50;
    const float margin = ui.grid.half(), right = wide ? std::min(ui.em() * 30, screen.x * 0.42f) : screen.x - 2 * margin;
    PanelPlace heap;
    heap.x = heap.y = margin;
    heap.width = wide ? screen.x - right - 3 * margin : right;
    heap.most_height = wide ? screen.y - 2 * margin : (screen.y - 3 * margin) * 0.45f;
    heap.full_height = true;
    heap.keys_walk = state.next_buds != nullptr;
    panel_begin(ui, heap.keys_walk ? "weigh-next" : "weigh-heap", heap);
    if (state.next_buds) {
        take(asked, next_buds_part(state, views, ui));
    } else {
        head_text(ui, ui.say("screen.weigh.title"));
        if (!exercise.written()) text(ui, ui.say("screen.weigh.asks"));
        for (const Lies place : {Lies::heap, Lies::wires, Lies::bundle}) take(asked, pieces_in(state, views, ui, place));
    }
    panel_end(ui);
    PanelPlace scale;
    scale.x = wide ? screen.x - right - margin : margin;
    scale.y = wide ? margin : heap.most_height + 2 * margin;
    scale.width = right;
    scale.most_height = screen.y - scale.y - margin;
    scale.full_height = true;
    scale.keys_walk = false;
    panel_begin(ui, "weigh-scale", scale);
    take(asked, scale_panel(state, views, ui));
    panel_end(ui);
    take(asked, say_panel(state, ui, ui.em() * 4));
    return asked;
}

} // namespace spurwright::ui
