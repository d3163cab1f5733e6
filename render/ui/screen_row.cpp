#include <algorithm>
#include <array>

#include "render/ui/panel.h"
#include "render/ui/part_words.h"
#include "render/ui/screens.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using Asked = std::optional<Request>;
using practice::HandTool;
using practice::StepSaid;

void take(Asked& asked, Asked one) {
    if (one) asked = std::move(one);
}

// One step of the strip: its word, a tick when its own acts are done, a bar when the trainee stands there.
Asked step_stone(Ui& ui, const Practice& practice, std::size_t i, bool beside) {
    const StepSaid& said = practice.strip()[i];
    const std::string word = ui.say("screen.step." + std::string(word_of(said.step))), label = (said.done ? "✓ " : "") + word;
    if (beside) flow(ui, button_width(ui, label));
    const bool here = practice.step() == said.step;
    if (button(ui, "row.step." + std::string(word_of(said.step)), label, {here ? Weight::plain : Weight::quiet, true, here, 0, {}})) return Request{ask::GoToStep{said.step}};
    return {};
}

// The strip of steps and what comes next; the screen's own buttons at its end.
Asked top_band(const State& state, Views& views, Ui& ui, float& foot) {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const Practice& practice = *state.practice;
    Asked asked;
    PanelPlace place;
    place.width = screen.x;
    place.most_height = screen.y * 0.5f;
    place.keys_walk = false;
    panel_begin(ui, "row.top", place);
    take(asked, command_button(ui, state, views, "row", "home", Weight::quiet, false));
    const auto& strip = practice.strip();
    const auto here = static_cast<std::size_t>(practice.step()), count = strip.size();
    const StepSaid& said = strip[here];
    const bool narrow = ui.narrow();
    const auto word_at = [&](std::size_t i) { return ui.say("screen.step." + std::string(word_of(strip[i].step))); };
    if (!narrow)
        for (std::size_t i = 0; i < count; ++i) take(asked, step_stone(ui, practice, i, true));
    const bool with_keys = screen.x > ui.em() * 74;
    if (!narrow) {  // the screen's own buttons at the far edge, apart from the steps
        float all = 0;
        for (const std::string_view name : {"undo", "redo", "find", "keys"})
            all += button_width(ui, ui.say("screen.do." + std::string(name)), with_keys ? key_text(ui, name) : std::string()) + ui.grid.gap();
        const float x = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x - all, last = ImGui::GetItemRectMax().x;
        if (x > last + ui.grid.gap()) {
            ImGui::SameLine();
            ImGui::Dummy({x - last - 2 * ui.grid.gap(), ui.grid.row()});
        }
    }
    for (const std::string_view name : {"undo", "redo", "find", "keys"}) {
        if (narrow && (name == "keys" || name == "redo")) continue;  // by key and by Find
        take(asked, command_button(ui, state, views, "row", name, Weight::quiet, with_keys, true));
    }
    const std::string on = ui.say("screen.row.next", {{"text", word_at(std::min(here + 1, count - 1))}}), on_key = narrow ? std::string() : key_text(ui, "next-step");
    const ButtonLook next{said.done ? Weight::main : Weight::plain, true, false, 0, on_key};
    const std::string sentence = ui.words.sentence(said.key, said.arguments);
    bool on_pressed = false;
    if (narrow) {  // no room for seven stones: the step's name stands before its sentence
        flow(ui, button_width(ui, on, on_key));
        on_pressed = button(ui, "row.next-step", on, next);
        text(ui, ui.say("screen.row.step-says", {{"step", word_at(here)}, {"text", sentence}}));
    } else {
        row_text(ui, sentence);
        flow(ui, button_width(ui, on, on_key));
        on_pressed = button(ui, "row.next-step", on, next);
    }
    if (on_pressed) asked = ask::NextStep{};
    if (state.shell.read_only) text(ui, ui.say("screen.row.read-only"));
    if (ui.words.unchecked() && !narrow && !state.shell.read_only) {
        const std::string unchecked = ui.say("words.unchecked");
        flow(ui, text_size(ui, unchecked, 0).x);
        row_text(ui, unchecked, true);
    }
    foot = panel_end(ui).y1;
    return asked;
}

void findings_so_far(Ui& ui, const Practice& practice) {
    int shown = 0;
    for (const practice::Walked& piece : practice.feedback(practice.step())) {
        if (piece.folded || shown++ == 3) continue;
        tape_word(ui, "", tape_of(piece.mend), ui.say("mend." + std::string(word_of(piece.mend))));
        text(ui, ui.words.sentence(piece.key, piece.arguments));
    }
}

// What this vine is and what is asked.
Asked vine_card(const State& state, Views& views, Ui& ui, float top, float foot) {
    Asked asked;
    const Practice& practice = *state.practice;
    const Vine& vine = practice.start();
    PanelPlace place;
    place.x = ui.grid.half();
    place.y = top + ui.grid.half();
    place.width = std::min(ui.em() * (views.row.card_open || views.row.looks_open ? 19.0f : 9.5f), ImGui::GetIO().DisplaySize.x * 0.62f);
    place.most_height = foot - place.y - ui.grid.half();
    place.keys_walk = false;
    panel_begin(ui, "row.card", place);
    if (fold(ui, "row.card", ui.say("screen.row.vine"), views.row.card_open)) {
        text(ui, ui.say("screen.row.age", {{"n", Count{vine.winter}}}));
        text(ui, ui.say("screen.row.place", {{"spacing", vine.spacing}}));
        text(ui, ui.say("screen.row.asked", {{"n", Count{practice.asked_buds()}}}));
        text(ui, ui.say("screen.row.asked-pieces"));
        if (practice.chosen) {
            rule_line(ui);
            const Label label = hover_label(ui, practice.now(), {practice.chosen, practice.chosen_node, {}}, practice.calliper_asked, state.shell.settings.units == settings::UnitsName::inch, {});
            strong_text(ui, ui.say("screen.row.chosen"));
            text(ui, label.first);
            if (!label.second.empty()) text(ui, label.second);
            if (practice.chosen_node) text(ui, ui.say("screen.row.at-node", {{"n", Count{index_of(practice.chosen_node)}}}));
        }
        findings_so_far(ui, practice);
        if (!practice.task().code.empty()) text(ui, practice.task().code, true);
        unchecked_line(ui);
    }
    take(asked, looks_fold(ui, state, views, "row"));
    panel_end(ui);
    return asked;
}

// Every act by name, the last first; pressed, the vine goes back to just after it.
Asked acts_card(const State& state, Views& views, Ui& ui, float top, float foot) {
    const Practice& practice = *state.practice;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    Asked asked;
    PanelPlace place;
    place.x = screen.x - ui.grid.half();
    place.y = top + ui.grid.half();
    place.pivot_x = 1;
    place.width = std::min(ui.em() * (views.row.acts_open ? 17.0f : 9.0f), screen.x * 0.62f);
    place.most_height = foot - place.y - ui.grid.half();
    place.keys_walk = false;
    panel_begin(ui, "row.acts", place);
    const auto done = practice.done_count();
    if (fold(ui, "row.acts", ui.say("screen.row.acts", {{"n", Count{static_cast<std::int64_t>(done)}}}), views.row.acts_open)) {
        const auto& acts = practice.acts();
        if (acts.empty()) text(ui, ui.say("screen.row.no-acts"), true);
        for (std::size_t i = acts.size(); i-- > 0;) {
            const std::string name = ui.words.sentence(acts[i].key, acts[i].arguments);
            const std::string label = ui.say("screen.row.act", {{"n", Count{static_cast<std::int64_t>(i) + 1}}, {"text", name}});
            if (list_row(ui, "row.act." + std::to_string(i), label, i + 1 == done, i >= done ? ui.say("screen.row.undone") : std::string())) asked = ask::JumpTo{i + 1};
        }
        if (!acts.empty() && list_row(ui, "row.act.none", ui.say("screen.row.before-acts"), done == 0)) asked = ask::JumpTo{0};
    }
    panel_end(ui);
    return asked;
}

constexpr std::array<Role, 6> tapes{Role::left, Role::right, Role::spur, Role::remove, Role::spare, Role::none};

Asked use_tape(const Practice& practice, Role role) {
    return practice.chosen ? Request{ask::MarkAs{practice.chosen, role}} : Request{ask::TapeSays{role}};
}

// What the tape in hand says; with a piece chosen, hangs it there.
Asked tape_bar(const State& state, Views& views, Ui& ui) {
    const Practice& practice = *state.practice;
    Asked asked;
    text(ui, practice.chosen ? ui.say("screen.row.tape-for", {{"part", practice.chosen}}) : ui.say("screen.row.tape-says"), true);
    for (std::size_t i = 0; i < tapes.size(); ++i) {
        const std::string label = ui.say("screen.tape." + std::string(word_of(tapes[i]))), name = "row.tape." + std::string(word_of(tapes[i]));
        const float before = tapes[i] == Role::none ? 0 : ui.em() * 1.3f, width = button_width(ui, label) + before;
        if (i > 0) flow(ui, width);
        const bool walked = static_cast<int>(i) == views.row.bar_at && practice.chosen;
        const ImVec2 at = ImGui::GetCursorScreenPos();
        if (button(ui, name, label, {Weight::plain, true, walked || practice.tape == tapes[i], width, {}, before})) asked = use_tape(practice, tapes[i]);
        if (tapes[i] != Role::none) hang_tape(*ImGui::GetWindowDrawList(), {at.x + ui.em() * 0.95f, at.y + ui.em() * 0.3f}, ui.grid.row() - ui.em() * 0.7f, ui.em() * 0.3f, tape_of(tapes[i]), ui.face);
    }
    if (ui.pressed({key::right})) views.row.bar_at = std::min(views.row.bar_at + 1, static_cast<int>(tapes.size()) - 1);
    if (ui.pressed({key::left})) views.row.bar_at = std::max(views.row.bar_at - 1, 0);
    if (ui.pressed({key::enter}) && practice.chosen) {
        asked = use_tape(practice, tapes[static_cast<std::size_t>(views.row.bar_at)]);
        views.row.bar = Bar::none;
    }
    return asked;
}

// Which way the chosen cane is laid: by button or by the arrow that points there.
Asked lay_bar(const State& state, Views& views, Ui& ui) {
    const Practice& practice = *state.practice;
    Asked asked;
    if (!practice.chosen) {
        text(ui, ui.say("screen.row.lay-choose"), true);
        return {};
    }
    text(ui, ui.say("screen.row.lay-which", {{"part", practice.chosen}}), true);
    const std::string near = ui.say("screen.row.lay-near"), far = ui.say("screen.row.lay-far");
    if (button(ui, "row.lay.near", near) || ui.pressed({key::left})) asked = ask::LayTo{practice.chosen, Side::left};
    flow(ui, button_width(ui, far));
    if (button(ui, "row.lay.far", far) || ui.pressed({key::right})) asked = ask::LayTo{practice.chosen, Side::right};
    if (asked) views.row.bar = Bar::none;
    return asked;
}

struct Hand {
    HandTool tool;
    std::string_view command;
};
constexpr std::array<Hand, 8> hand_tools{{{HandTool::none, "point"}, {HandTool::tape, "tape"}, {HandTool::shears, "shears"}, {HandTool::loppers, "loppers"},
                                          {HandTool::saw, "saw"}, {HandTool::hands, "hands"}, {HandTool::ties, "ties"}, {HandTool::calliper, "calliper"}}};
// The key shown on a tool is that of the act done with it.
std::string_view key_of(HandTool tool) {
    switch (tool) {
        case HandTool::tape: return "tape";
        case HandTool::shears: return "cut";
        case HandTool::hands: return "lay";
        case HandTool::ties: return "tie";
        case HandTool::calliper: return "calliper";
        case HandTool::none:
        case HandTool::loppers:
        case HandTool::saw: break;
    }
    return "";
}

bool practice_waits(const State& state) { return state.practice->waiting().has_value(); }

float tape_bar_width(const Ui& ui) {
    float all = 3 * ui.grid.gap();
    for (const Role role : tapes) all += button_width(ui, ui.say("screen.tape." + std::string(word_of(role)))) + ui.em() * 1.3f + ui.grid.gap();
    return all;
}

// The row of hand tools, and above it the bar of the one in hand; in its place where there is no room for both.
Asked tool_row(const State& state, Views& views, Ui& ui, float& top) {
    const Practice& practice = *state.practice;
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const bool narrow = ui.narrow();
    const auto hint_of = [&](HandTool tool) { return narrow ? std::string() : key_text(ui, key_of(tool)); };
    Asked asked;
    std::array<float, hand_tools.size()> widths{};
    float all = 3 * ui.grid.gap();
    for (std::size_t i = 0; i < hand_tools.size(); ++i) {
        widths[i] = button_width(ui, ui.say("screen.tool." + std::string(word_of(hand_tools[i].tool))), hint_of(hand_tools[i].tool));
        all += widths[i] + ui.grid.gap();
    }
    const bool lay = views.row.bar == Bar::lay || (practice.tool == HandTool::hands && practice.chosen);
    const bool tape = !lay && (views.row.bar == Bar::tape || practice.tool == HandTool::tape);
    PanelPlace place;
    place.x = screen.x / 2;
    place.y = screen.y - ui.grid.half();
    place.pivot_x = 0.5f;
    place.pivot_y = 1;
    place.width = std::min(tape ? std::max(all, tape_bar_width(ui)) : all, screen.x - 2 * ui.grid.half());
    place.most_height = screen.y * 0.5f;
    place.keys_walk = false;
    panel_begin(ui, "row.tools", place);
    if (lay) take(asked, lay_bar(state, views, ui));
    if (tape) take(asked, tape_bar(state, views, ui));
    if (narrow && (lay || tape)) {
        const std::string back = ui.say("screen.row.tools");
        flow(ui, button_width(ui, back));
        if (button(ui, "row.tools", back, {Weight::quiet, true, false, 0, {}})) take(asked, find_command("point")->ask(state, views));
    } else {
        for (std::size_t i = 0; i < hand_tools.size(); ++i) {
            const Hand& hand = hand_tools[i];
            const std::string word(word_of(hand.tool)), label = ui.say("screen.tool." + word), hint = hint_of(hand.tool);
            if (i > 0) flow(ui, widths[i]);
            if (button(ui, "row.tool." + word, label, {Weight::plain, true, practice.tool == hand.tool, 0, hint})) take(asked, find_command(hand.command)->ask(state, views));
        }
    }
    top = panel_end(ui).y0;
    return asked;
}

}  // namespace

Asked screen_row(const State& state, Views& views, Ui& ui) {
    if (!views.row.set) {  // a small window begins with its cards folded
        views.row.set = true;
        views.row.card_open = !ui.narrow();
    }
    if (views.row.bar != Bar::none && ui.pressed({key::escape})) views.row.bar = Bar::none;
    Asked asked;
    float top = 0, foot = ImGui::GetIO().DisplaySize.y;
    take(asked, top_band(state, views, ui, top));
    const bool narrow = ui.narrow();
    if (narrow && (views.row.card_open || views.row.looks_open)) views.row.acts_open = false;
    // On a small window an open card takes the place of the tools until it is folded again.
    const bool near_open = views.row.card_open || views.row.looks_open, card_alone = narrow && (near_open || views.row.acts_open);
    if (!card_alone) take(asked, tool_row(state, views, ui, foot));
    const bool said = state.shell.message || practice_waits(state);
    if (!said && (!narrow || !views.row.acts_open)) take(asked, vine_card(state, views, ui, top, foot));
    if (!said && (!narrow || !near_open)) take(asked, acts_card(state, views, ui, top, foot));
    take(asked, say_panel(state, ui, top));
    return asked;
}

}  // namespace spurwright::ui
