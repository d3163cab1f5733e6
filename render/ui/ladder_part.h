// What other screens say of a vine on the ladder: whose each step is, the words that explain the step at hand, and afterwards
// what of the look back is one's own. Must not know: how a rung is chosen.
#pragma once

#include "render/ui/asked.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

// "look, choose and lengths": the steps of a rung that are the trainee's.
std::string own_steps(const Ui& ui, const lessons::Rung& rung);
// The lesson's words for the step at hand; empty where there are none.
std::string step_explained(const State& state, const Ui& ui);
// After the vine: what was one's own, and where that leads.
void ladder_after(const State& state, Ui& ui);

} // namespace spurwright::ui
