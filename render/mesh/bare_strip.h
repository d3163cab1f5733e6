// A trunk's dead strip, laid into its finished tube: only trunks that bear one pay for it. Must not know: the tables.
#pragma once

#include <cstdint>
#include <span>

#include "render/mesh/tube.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

// Cuts a flat without bark into the tube whose rings, of `sides` corners each, begin at vertex `first`; `from_root` says of
// each ring how far up the wood it stands. The flat is as wide as told at its upper end, runs out to a point below, and
// closes within its own width above.
void lay_bare(Mesh& mesh, std::uint32_t first, int sides, std::span<const Ring> rings, std::span<const double> from_root,
              const shape::DeadStrip& strip);

} // namespace spurwright::mesh
