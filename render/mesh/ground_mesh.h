// The soil with its ridge under the row, straw, leaves and clods on it. Only looked at.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/tube.h"

namespace spurwright::mesh {

// Height of the soil: a low ridge under the row, wheel tracks in the alley, a mound where the trunk stands.
double ground_height(double x, double z);

void add_ground(Writer& writer, const Detail& detail);
void add_straw(Writer& writer, double row_spacing, const Detail& detail);
void add_tufts(Writer& writer, double row_spacing, const Detail& detail); // grass of the alleys

} // namespace spurwright::mesh
