// The frost scene's second visit, as a part of the look back: what the night did, what to do with the cane that stands,
// and what other ways bring. Must not know: how the spring was drawn.
#pragma once

#include "render/ui/screens.h"

namespace spurwright::ui {

// Needs spring() or spring_lived().
std::optional<Request> spring_visit_part(const State& state, Views& views, Ui& ui);

} // namespace spurwright::ui
