// How much of the sky each vertex of the vine sees past the other wood: a closed form over the stems as capsules, no
// rays. Each capsule hides the share that a cylinder of its length hides from a small face (r / l times the cosine
// times the span of its ends); shares are multiplied. Same vine, same bytes. May run beside the picture: it only writes
// Vertex::occlusion.
#pragma once

#include "render/mesh/mesh.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

inline constexpr double occlusion_reach = 0.15; // metres; our choice

void bake_occlusion(Mesh& mesh, const shape::VineShape& vine);

} // namespace spurwright::mesh
