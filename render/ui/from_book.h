// Where the number of buds of the vine in hand comes from, where a reference vine's last weight sets it. Must not know: the
// book.
#pragma once

#include "render/ui/commands.h"

namespace spurwright::ui {

// Nothing where none does.
void from_book(Ui& ui, const State& state);

} // namespace spurwright::ui
