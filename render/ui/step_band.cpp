#include <algorithm>

#include "render/ui/ladder_part.h"
#include "render/ui/panel.h"
#include "render/ui/row_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;
using practice::StepSaid;

// One step of the strip: its word, a tick when its own acts are done, a bar when the trainee stands there.
Asked step_stone(Ui& ui, const Practice& practice, std::size_t i, bool beside) {
    const StepSaid& said = practice.strip()[i];
    const std::string word = ui.say("screen.step." + std::string(word_of(said.step))),
                      whose = practice.is_mine(said.step) || said.step == rules::Step::look_back ? word : ui.say("screen.ladder.step-shown", {{"text", word}}),
                      label = (said.done ? "✓ " : "") + whose;
    if (beside) flow(ui, button_width(ui, label));
    const bool here = practice.step() == said.step;
    if (button(ui, "row.step." + std::string(word_of(said.step)), label,
               {here ? Weight::plain : Weight::quiet, true, here, 0, {}}))
        return Request{ask::GoToStep{said.step}};
    return {};
}

} // namespace

// The strip of steps and what comes next; the screen's own buttons at its end.
Asked step_band(const State& state, Views& views, Ui& ui, float& foot) {
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
        for (std::size_t i = 0; i < count; ++i)
            if (strip[i].asked) take(asked, step_stone(ui, practice, i, true));
    const bool with_keys = screen.x > ui.em() * 74;
    if (!narrow) { // the screen's own buttons at the far edge, apart from the steps
        float all = 0;
        for (const std::string_view name : {"undo", "redo", "find", "keys"})
            all += button_width(ui, ui.say("screen.do." + std::string(name)),
                                with_keys ? key_text(ui, name) : std::string()) +
                   ui.grid.gap();
        const float x = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x - all,
                    last = ImGui::GetItemRectMax().x;
        if (x > last + ui.grid.gap()) {
            ImGui::SameLine();
            ImGui::Dummy({x - last - 2 * ui.grid.gap(), ui.grid.row()});
        }
    }
    for (const std::string_view name : {"undo", "redo", "find", "keys"}) {
        if (narrow && (name == "keys" || name == "redo")) continue; // by key and by Find
        take(asked, command_button(ui, state, views, "row", name, Weight::quiet, with_keys, true));
    }
    // A step that is not the trainee's is shown before the strip goes on.
    const bool shows = practice.to_be_shown(said.step);
    const std::string on = shows ? ui.say("screen.ladder.show") : ui.say("screen.row.next", {{"text", word_at(static_cast<std::size_t>(practice::step_after(strip, said.step)))}}),
                      on_key = narrow ? std::string() : key_text(ui, "next-step");
    const ButtonLook next{said.done || shows || said.step == rules::Step::look_back ? Weight::main : Weight::plain, true, false, 0, on_key};
    const std::string sentence = shows ? ui.say("screen.ladder.will-be-shown", {{"text", word_at(here)}}) : ui.words.sentence(said.key, said.arguments);
    bool on_pressed = false;
    if (narrow) { // no room for seven stones: the step's name stands before its sentence
        flow(ui, button_width(ui, on, on_key));
        on_pressed = button(ui, "row.next-step", on, next);
        text(ui, ui.say("screen.row.step-says", {{"step", word_at(here)}, {"text", sentence}}));
    } else {
        row_text(ui, sentence);
        flow(ui, button_width(ui, on, on_key));
        on_pressed = button(ui, "row.next-step", on, next);
    }
    if (on_pressed) asked = ask::NextStep{};
    if (const std::string explained = step_explained(state, ui); !explained.empty() && !narrow) text(ui, explained, true);
    if (practice.silent && !practice.can_undo()) row_text(ui, ui.say("screen.row.silent"));
    if (state.shell.read_only) text(ui, ui.say("screen.row.read-only"));
    if (ui.words.unchecked() && !narrow && !state.shell.read_only) {
        const std::string unchecked = ui.say("words.unchecked");
        flow(ui, text_size(ui, unchecked, 0).x);
        row_text(ui, unchecked, true);
    }
    foot = panel_end(ui).y1;
    return asked;
}

} // namespace spurwright::ui
