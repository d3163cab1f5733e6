// The doors of the home screen, drawn as places with lines and flat faces: a row of vines, a shed. Must not know:
// words.
#pragma once

#include "render/ui/ui.h"

namespace spurwright::ui {

void draw_row_place(ImDrawList& draw, const Box& box, const Palette& palette, float em);
void draw_shed_place(ImDrawList& draw, const Box& box, const Palette& palette, float em);
// One small pruned vine between its posts; `tied`: with its canes on the wire.
void draw_small_vine(ImDrawList& draw, ImVec2 foot, float height, const Palette& palette, bool tied);

} // namespace spurwright::ui
