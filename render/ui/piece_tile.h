// A piece of brush as it lies in the heap, to be told by looking: bark, buds, what stands on it. Never says what it is.
// Must not know: the scale, who pressed it.
#pragma once

#include "render/ui/widgets.h"
#include "scenarios/weighing/heap.h"

namespace spurwright::ui {

struct PieceLook {
    std::size_t canes_on = 0;  // still standing on it
    bool is_short = false;     // cut to the bundle's length
    bool wet = false;
    bool chosen = false;       // walked to
};

float piece_width(const Ui& ui);
// True in the frame it is pressed.
bool piece_tile(Ui& ui, std::string_view name, const weighing::Piece& piece, const PieceLook& look);

} // namespace spurwright::ui
