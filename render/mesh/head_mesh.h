// Old wood that is no tube: knobs where spurs and canes leave the head, wounds on the side of older wood, loose bark on
// the trunk. The head is drawn as closed caps with squashed knobs, never as a sawn disc.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

void add_knobs(Writer& writer, const shape::VineShape& vine, const Detail& detail);
void add_wound(Writer& writer, const shape::VineShape& vine, const shape::WoundShape& wound, const Detail& detail);
void add_strips(Writer& writer, const shape::VineShape& vine, const Detail& detail);

} // namespace spurwright::mesh
