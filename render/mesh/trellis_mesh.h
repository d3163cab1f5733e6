// Wires, clips, posts, stake, drip line and ties.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

void add_trellis(Writer& writer, const shape::VineShape& vine, const Detail& detail);
void add_tie(Writer& writer, const shape::TieShape& tie, const Detail& detail);

} // namespace spurwright::mesh
