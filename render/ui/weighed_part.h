// What came of a weighing: told at the scale, and in the look back of the vine that was weighed. And what is said of the
// coming winter's buds. Must not know: how it is weighed.
#pragma once

#include "render/ui/asked.h"
#include "render/ui/commands.h"

namespace spurwright::ui {

// The weight against the bundle's own with its doubt, and each slip with its mass.
void weighed_part(Ui& ui, const weighing::Verdict& verdict);
// The vine's log, the three numbers, and what came of them. Needs state.next_buds.
Asked next_buds_part(const State& state, Views& views, Ui& ui);

} // namespace spurwright::ui
