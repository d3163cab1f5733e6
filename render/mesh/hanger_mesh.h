// Tendrils and dry bunch stems: on the side of a node away from its bud.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

void add_hanger(Writer& writer, const shape::VineShape& vine, const shape::HangerShape& hanger, const Detail& detail);

} // namespace spurwright::mesh
