#include "render/ui/wall_parts.h"

#include <algorithm>

namespace spurwright::ui {

std::optional<quiz::Answer> typed_answer(const quiz::Item& item, const std::string& typed, bool entered) {
    if (typed.empty()) return std::nullopt;
    quiz::Answer answer;
    if (item.kind == quiz::Kind::count) {
        if (!entered && typed.size() < 2) return std::nullopt; // another digit may follow
        answer = {static_cast<std::uint8_t>(std::min(99, std::stoi(typed.substr(0, 2))))};
    } else {
        for (const char c : typed) answer.push_back(static_cast<std::uint8_t>(c - '0'));
        std::sort(answer.begin(), answer.end());
        if (answer.size() < static_cast<std::size_t>(item.asked())) return std::nullopt;
    }
    return item.takes(answer) ? std::optional(answer) : std::nullopt;
}

Asked screen_wall(const State& state, Views& views, Ui& ui) {
    Asked asked;
    const quiz::Quiz* quiz = state.crew->quiz();
    if (!quiz) asked = wall_setup(state, views, ui);
    else if (quiz->phase() == quiz::Phase::ended) asked = wall_results(state, views, ui);
    else asked = wall_question(state, views, ui);
    take(asked, say_panel(state, ui, ui.em() * 4));
    return asked;
}

} // namespace spurwright::ui
