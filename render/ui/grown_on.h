// The scene's two choices grown on through the winters, as a plain table. Must not know: how they were grown.
#pragma once

#include "render/ui/screens.h"

namespace spurwright::ui {

// Where each winter's laid cane starts, near choice beside far choice, a side at a time. Needs grown_on().
std::optional<Request> grown_on_table(const State& state, Views& views, Ui& ui);

} // namespace spurwright::ui
