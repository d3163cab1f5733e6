#include <algorithm>
#include <array>
#include <vector>

#include "render/ui/panel.h"
#include "render/ui/part_words.h"
#include "render/ui/row_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::HandTool;

constexpr std::uint32_t usual_hold = 8; // node that a hand takes a cane at (our choice)
constexpr std::int32_t pull_step = 100; // thousandths of the way, a press

// Where a cane may stay for the frost its tape takes the spare's place.
std::vector<Role> tapes_for(const Practice& practice) {
    if (practice.start().system == System::cordon) return {Role::spur, Role::remove, Role::none}; // nothing is laid there
    return {Role::left, Role::right, Role::spur, Role::remove, practice.task().frost ? Role::kicker : Role::spare, Role::none};
}

Asked use_tape(const Practice& practice, Role role) {
    return practice.chosen ? Request{ask::MarkAs{practice.chosen, role}} : Request{ask::TapeSays{role}};
}

// What the tape in hand says; with a piece chosen, hangs it there.
Asked tape_bar(const State& state, Views& views, Ui& ui) {
    const Practice& practice = *state.practice;
    Asked asked;
    text(ui,
         practice.chosen ? ui.say("screen.row.tape-for", {{"part", practice.chosen}}) : ui.say("screen.row.tape-says"),
         true);
    const auto tapes = tapes_for(practice);
    for (std::size_t i = 0; i < tapes.size(); ++i) {
        const std::string label = ui.say("screen.tape." + std::string(word_of(tapes[i]))),
                          name = "row.tape." + std::string(word_of(tapes[i]));
        const float before = tapes[i] == Role::none ? 0 : ui.em() * 1.3f, width = button_width(ui, label) + before;
        if (i > 0) flow(ui, width);
        const bool walked = static_cast<int>(i) == views.row.bar_at && practice.chosen;
        const ImVec2 at = ImGui::GetCursorScreenPos();
        if (button(ui, name, label, {Weight::plain, true, walked || practice.tape == tapes[i], width, {}, before}))
            asked = use_tape(practice, tapes[i]);
        if (tapes[i] != Role::none)
            hang_tape(*ImGui::GetWindowDrawList(), {at.x + ui.em() * 0.95f, at.y + ui.em() * 0.3f},
                      ui.grid.row() - ui.em() * 0.7f, ui.em() * 0.3f, tape_of(tapes[i]), ui.face);
    }
    if (ui.pressed({key::right})) views.row.bar_at = std::min(views.row.bar_at + 1, static_cast<int>(tapes.size()) - 1);
    if (ui.pressed({key::left})) views.row.bar_at = std::max(views.row.bar_at - 1, 0);
    if (ui.pressed({key::enter}) && practice.chosen) {
        asked = use_tape(practice, tapes[static_cast<std::size_t>(views.row.bar_at)]);
        views.row.bar = Bar::none;
    }
    return asked;
}

// Up and down bend the chosen cane a tenth of the way to the wire, Shift and an arrow the way it points: what the pointer
// does by pulling. Enter lays it where it is bent to.
Asked pulled_by_keys(const Practice& practice, const Ui& ui) {
    const practice::Pull& now = practice.pulled();
    const bool held = now && now.cane == practice.chosen;
    practice::Pull to = now;
    if (!held) {
        const Axis& cane = *practice.start().find(practice.chosen);
        const std::uint32_t last = cane.node_count - 1, node = practice.chosen_node ? index_of(practice.chosen_node) : usual_hold;
        to = {practice.chosen, node_id(practice.chosen, std::clamp(node, 1u, std::max(last, 1u))), cane.side, {}};
    }
    if (held && (ui.pressed({key::enter}) || ui.pressed({key::pad_enter}))) return Request{ask::LayTo{now.cane, now.side}};
    if (ui.pressed({key::down})) to.share.count += pull_step;
    else if (ui.pressed({key::up})) to.share.count -= pull_step;
    else if (ui.pressed({key::left, false, true, false})) to.side = Side::left;
    else if (ui.pressed({key::right, false, true, false})) to.side = Side::right;
    else return {};
    return Request{ask::PullCane{to}};
}

// Which way the chosen cane is laid: by button or by the arrow that points there.
Asked lay_bar(const State& state, Views& views, Ui& ui) {
    const Practice& practice = *state.practice;
    Asked asked;
    if (!practice.chosen) {
        text(ui, ui.say("screen.row.lay-choose"), true);
        return {};
    }
    text(ui, practice.bend() ? bend_words(ui, *practice.bend()) : ui.say("screen.row.lay-which", {{"part", practice.chosen}}), true);
    if (auto pulled = pulled_by_keys(practice, ui)) asked = std::move(pulled);
    const std::string near = ui.say("screen.row.lay-near"), far = ui.say("screen.row.lay-far");
    if (button(ui, "row.lay.near", near) || ui.pressed({key::left})) asked = ask::LayTo{practice.chosen, Side::left};
    flow(ui, button_width(ui, far));
    if (button(ui, "row.lay.far", far) || ui.pressed({key::right})) asked = ask::LayTo{practice.chosen, Side::right};
    if (asked && std::holds_alternative<ask::LayTo>(*asked)) views.row.bar = Bar::none;
    if (!ui.narrow()) {
        const std::string hint = ui.say("screen.row.lay-bend");
        flow(ui, text_size(ui, hint, 0).x);
        row_text(ui, hint, true);
    }
    return asked;
}

// With a cutting tool in hand and a piece chosen: cut it where it is chosen, however hidden that place is.
Asked cut_bar(const State& state, Views& views, Ui& ui) {
    const Practice& practice = *state.practice;
    const bool base = !practice.chosen_node || index_of(practice.chosen_node) == 0;
    const std::string label =
        base ? ui.say("screen.row.cut-base", {{"part", practice.chosen}})
             : ui.say("screen.row.cut-node", {{"part", practice.chosen}, {"node", Count{index_of(practice.chosen_node)}}});
    // While the hand points at wood the key cuts there; the button always cuts what is chosen.
    const bool pointing = static_cast<bool>(practice.hover);
    if (button(ui, "row.cut", label, {Weight::plain, true, false, 0, ui.narrow() || pointing ? std::string() : key_text(ui, "cut")}))
        return find_command("cut")->ask(state, views);
    return {};
}

// With ties in hand and a cane chosen: the tie near its end, as the hand that ties a whole cane puts it.
Asked tie_bar(const State& state, Views& views, Ui& ui) {
    const std::string label = ui.say("screen.row.tie-end", {{"part", state.practice->chosen}});
    if (button(ui, "row.tie", label, {Weight::plain, true, false, 0, ui.narrow() ? std::string() : key_text(ui, "tie")}))
        return find_command("tie")->ask(state, views);
    return {};
}

struct Hand {
    HandTool tool;
    std::string_view command;
};
constexpr std::array<Hand, 8> all_tools{{{HandTool::none, "point"},
                                         {HandTool::tape, "tape"},
                                         {HandTool::shears, "shears"},
                                         {HandTool::loppers, "loppers"},
                                         {HandTool::saw, "saw"},
                                         {HandTool::hands, "hands"},
                                         {HandTool::ties, "ties"},
                                         {HandTool::calliper, "calliper"}}};
float tape_bar_width(const Practice& practice, const Ui& ui) {
    float all = 3 * ui.grid.gap();
    for (const Role role : tapes_for(practice))
        all += button_width(ui, ui.say("screen.tape." + std::string(word_of(role)))) + ui.em() * 1.3f + ui.grid.gap();
    return all;
}

} // namespace

// The row of hand tools, and above it the bar of the one in hand; in its place where there is no room for both.
Asked hand_tools(const State& state, Views& views, Ui& ui, float& top) {
    const Practice& practice = *state.practice;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const bool narrow = ui.narrow();
    const auto hint_of = [&](const Hand& tool) { return narrow ? std::string() : key_text(ui, tool.command); };
    Asked asked;
    std::array<float, all_tools.size()> widths{};
    float all = 3 * ui.grid.gap();
    for (std::size_t i = 0; i < all_tools.size(); ++i) {
        widths[i] = button_width(ui, ui.say("screen.tool." + std::string(word_of(all_tools[i].tool))),
                                 hint_of(all_tools[i]));
        all += widths[i] + ui.grid.gap();
    }
    const bool lay = views.row.bar == Bar::lay || (practice.tool == HandTool::hands && practice.chosen);
    const bool tape = !lay && (views.row.bar == Bar::tape || practice.tool == HandTool::tape);
    const bool cut = !lay && !tape && cuts(practice.tool) && practice.chosen;
    PanelPlace place;
    place.x = screen.x / 2;
    place.y = screen.y - ui.grid.half();
    place.pivot_x = 0.5f;
    place.pivot_y = 1;
    place.width = std::min(tape ? std::max(all, tape_bar_width(practice, ui)) : all, screen.x - 2 * ui.grid.half());
    place.most_height = screen.y * 0.5f;
    place.keys_walk = false;
    panel_begin(ui, "row.tools", place);
    const bool tie = !lay && !tape && practice.tool == HandTool::ties && practice.chosen;
    views.row.bar_shown = !narrow && (lay || tape || cut || tie); // narrow, it stands in the tools' place and is taller
    if (lay) take(asked, lay_bar(state, views, ui));
    if (tape) take(asked, tape_bar(state, views, ui));
    if (cut) take(asked, cut_bar(state, views, ui));
    if (tie) take(asked, tie_bar(state, views, ui));
    if (narrow && (lay || tape || cut || tie)) {
        const std::string back = ui.say("screen.row.tools");
        flow(ui, button_width(ui, back));
        if (button(ui, "row.tools", back, {Weight::quiet, true, false, 0, {}}))
            take(asked, find_command("point")->ask(state, views));
    } else {
        for (std::size_t i = 0; i < all_tools.size(); ++i) {
            const Hand& hand = all_tools[i];
            const std::string word(word_of(hand.tool)), label = ui.say("screen.tool." + word),
                                                        hint = hint_of(hand);
            if (i > 0) flow(ui, widths[i]);
            if (button(ui, "row.tool." + word, label, {Weight::plain, true, practice.tool == hand.tool, 0, hint}))
                take(asked, find_command(hand.command)->ask(state, views));
        }
    }
    top = panel_end(ui).y0;
    return asked;
}

} // namespace spurwright::ui
