// What if a cut were moved: the part of the look back that tells of it. Must not know: what a cut is worth.
#pragma once

#include "render/ui/screens.h"

namespace spurwright::ui {

// Needs state.practice->look()->moved.
std::optional<Request> moved_cut_part(const State& state, Views& views, Ui& ui);

} // namespace spurwright::ui
