// Buds as closed teardrops seated in their node, so that they can be counted and their side told.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

struct BudSize {
    double length = 0, width = 0, thickness = 0;
}; // metres

BudSize size_of(const shape::BudShape& bud);
void add_bud(Writer& writer, const shape::VineShape& vine, const shape::BudShape& bud, const Detail& detail);

} // namespace spurwright::mesh
