#include "render/ui/ladder_part.h"

namespace spurwright::ui {

std::string own_steps(const Ui& ui, const lessons::Rung& rung) {
    std::string steps;
    for (std::size_t i = 0; i < rung.mine.size(); ++i)
        if (rung.mine[i]) steps += (steps.empty() ? "" : ", ") + ui.say("screen.step." + std::string(word_of(static_cast<rules::Step>(i))));
    return steps;
}

std::string step_explained(const State& state, const Ui& ui) {
    const auto& ladder = state.practice->task().ladder;
    const rules::Step step = state.practice->step();
    if (!ladder || !ladder->rung.explained || step == rules::Step::look_back || !state.practice->is_mine(step)) return {};
    return ui.say(ladder->lesson.says_of(step));
}

void ladder_after(const State& state, Ui& ui) {
    const auto& ladder = state.practice->task().ladder;
    if (!ladder || ladder->rung.watched()) return;
    if (!ladder->rung.whole()) text(ui, ui.say("screen.ladder.yours-were", {{"text", own_steps(ui, ladder->rung)}}));
    if (const auto yours = state.practice->yours()) text(ui, ui.say("screen.ladder.yours-lost", {{"points", std::max(Tenths{0}, yours->lost())}}));
    if (state.ladder && state.practice->yours()) strong_text(ui, ui.words.sentence(state.ladder->standing.why, state.ladder->standing.arguments));
    rule_line(ui);
}

} // namespace spurwright::ui
