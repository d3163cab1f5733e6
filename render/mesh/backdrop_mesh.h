// What stands around the vine: its two neighbours, the rows behind, the closed horizon. Drawn from numbers of their
// own; only the ends of the neighbours' canes are exact, since the gap to them is judged.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

// Rows stand shifted against each other by this share of the spacing; ground shaders know it too.
inline constexpr double row_shift = 0.37;

void add_neighbours(Writer& writer, const shape::VineShape& vine, const Detail& detail);
void add_rows(Writer& writer, const shape::VineShape& vine);

} // namespace spurwright::mesh
