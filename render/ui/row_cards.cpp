#include <algorithm>

#include "render/ui/from_book.h"
#include "render/ui/ladder_part.h"
#include "render/ui/panel.h"
#include "render/ui/part_words.h"
#include "render/ui/row_parts.h"

namespace spurwright::ui {
namespace {

namespace ask = practice::ask;

void findings_so_far(Ui& ui, const Practice& practice) {
    int shown = 0;
    for (const practice::Walked& piece : practice.feedback(practice.step())) {
        if (piece.folded || shown++ == 3) continue;
        tape_word(ui, "", tape_of(piece.mend), ui.say("mend." + std::string(word_of(piece.mend))));
        text(ui, ui.words.sentence(piece.key, piece.arguments));
    }
}

std::string asked_pieces(const Ui& ui, const Practice& practice) {
    const System system = practice.start().system;
    if (system == System::cordon) return ui.say("screen.row.asked-spurs", {{"n", Count{practice.asked_row_spurs()}}});
    if (system == System::one_cane) return ui.say("screen.row.asked-one-cane");
    return ui.say("screen.row.asked-pieces");
}

} // namespace

// What this vine is and what is asked.
Asked vine_card(const State& state, Views& views, Ui& ui, float top, float foot) {
    Asked asked;
    const Practice& practice = *state.practice;
    const Vine& vine = practice.start();
    PanelPlace place;
    place.x = ui.grid.half();
    place.y = top + ui.grid.half();
    place.width = std::min(ui.em() * (views.row.card_open || views.row.looks_open ? 19.0f : 9.5f),
                           ImGui::GetIO().DisplaySize.x * 0.62f);
    place.most_height = foot - place.y - ui.grid.half();
    place.keys_walk = false;
    panel_begin(ui, "row.card", place);
    if (state.two) take(asked, command_button(ui, state, views, "row", "two-back", Weight::plain, !ui.narrow()));
    if (fold(ui, "row.card", ui.say("screen.row.vine"), views.row.card_open)) {
        if (!practice.task().task_key.empty()) {
            text(ui, ui.say(practice.task().task_key));
            rule_line(ui);
        }
        if (const auto& ladder = practice.task().ladder; ladder && !ladder->rung.whole() && !ladder->rung.watched()) text(ui, ui.say("screen.ladder.yours", {{"text", own_steps(ui, ladder->rung)}}));
        if (const std::string explained = step_explained(state, ui); ui.narrow() && !explained.empty()) text(ui, explained);
        text(ui, ui.say("screen.row.age", {{"n", Count{vine.winter}}}));
        text(ui, ui.say("screen.row.place", {{"spacing", vine.spacing}}));
        if (practice.task().tag) text(ui, ui.say("screen.row.tag", {{"weight", *practice.task().tag}}));
        if (!state.shell.offers_questions) text(ui, ui.say("screen.row.asked", {{"n", Count{practice.asked_buds()}}}));
        from_book(ui, state);
        text(ui, asked_pieces(ui, practice));
        if (practice.task().frost) text(ui, ui.say("screen.row.asked-standing"));
        if (practice.chosen) {
            rule_line(ui);
            const Label label =
                hover_label(ui, practice.now(), {practice.chosen, practice.chosen_node, {}}, practice.calliper_asked,
                            state.shell.settings.units == settings::UnitsName::inch, {});
            strong_text(ui, ui.say("screen.row.chosen"));
            text(ui, label.first);
            if (!label.second.empty()) text(ui, label.second);
            if (practice.chosen_node)
                text(ui, ui.say("screen.row.at-node", {{"n", Count{index_of(practice.chosen_node)}}}));
        }
        if (practice.silent) text(ui, ui.say("screen.row.silent"), true);
        findings_so_far(ui, practice);
        if (!practice.task().code.empty()) text(ui, practice.task().code, true);
        take(asked, command_button(ui, state, views, "row", "words"));
        take(asked, command_button(ui, state, views, "row", "buds", Weight::plain, true, true));
        if (!practice.task().asks.empty()) take(asked, command_button(ui, state, views, "row", "questions", Weight::plain, true, true));
        if (ui.narrow()) unchecked_line(ui);
    }
    if (!ui.narrow() || views.row.card_open || views.row.looks_open) take(asked, looks_fold(ui, state, views, "row"));
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
    if (fold(ui, "row.acts", ui.say("screen.row.acts", {{"n", Count{static_cast<std::int64_t>(done)}}}),
             views.row.acts_open)) {
        const auto& acts = practice.acts();
        if (acts.empty()) text(ui, ui.say("screen.row.no-acts"), true);
        for (std::size_t i = acts.size(); i-- > 0;) {
            const std::string name = ui.words.sentence(acts[i].key, acts[i].arguments);
            const std::string label =
                ui.say("screen.row.act", {{"n", Count{static_cast<std::int64_t>(i) + 1}}, {"text", name}});
            if (list_row(ui, "row.act." + std::to_string(i), label, i + 1 == done,
                         i >= done ? ui.say("screen.row.undone") : std::string()))
                asked = ask::JumpTo{i + 1};
        }
        if (!acts.empty() && list_row(ui, "row.act.none", ui.say("screen.row.before-acts"), done == 0))
            asked = ask::JumpTo{0};
    }
    panel_end(ui);
    return asked;
}

} // namespace spurwright::ui
