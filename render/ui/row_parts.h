// The parts of the practice screen, each in its own file: the band of steps, the hand tools, the cards at both sides.
// Must not know: the picture.
#pragma once

#include "render/ui/asked.h"
#include "render/ui/screens.h"

namespace spurwright::ui {

// The strip of steps and what comes next; the screen's own buttons at its end. `foot`: where it ends.
Asked step_band(const State& state, Views& views, Ui& ui, float& foot);
// The row of hand tools, and above it the bar of the one in hand; in its place where there is no room for both. `top`:
// where it begins.
Asked hand_tools(const State& state, Views& views, Ui& ui, float& top);
// What this vine is, what is asked, what is chosen; the ways to look.
Asked vine_card(const State& state, Views& views, Ui& ui, float top, float foot);
// Every act by name, the last first; pressed, the vine goes back to just after it.
Asked acts_card(const State& state, Views& views, Ui& ui, float top, float foot);
// What is offered before the first act: to watch the vine done once, to say old or new. Draws nothing where nothing is.
bool offers_anything(const State& state);
Asked offer_card(const State& state, Views& views, Ui& ui, float top);

} // namespace spurwright::ui
