// The three faces of the wall: what is set before a quiz, a question with its answers, the results. Must not know: the
// picture.
#pragma once

#include "render/ui/asked.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

Asked wall_setup(const State& state, Views& views, Ui& ui);
Asked wall_question(const State& state, Views& views, Ui& ui);
Asked wall_results(const State& state, Views& views, Ui& ui);

// What was typed, once it is an answer to this item; `whole`: Enter was pressed, or no more digit can follow.
std::optional<quiz::Answer> typed_answer(const quiz::Item& item, const std::string& typed, bool entered);

} // namespace spurwright::ui
