// How much of the sky each vertex of the vine sees past the other wood: a closed form over the stems as capsules, no
// rays. Each capsule hides the share that a cylinder of its length hides from a small face (r / l times the cosine
// times the span of its ends); shares are multiplied. Same vine, same bytes. May run beside the picture: it only writes
// Vertex::occlusion.
#pragma once

#include <vector>

#include "render/mesh/mesh.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

inline constexpr double occlusion_reach = 0.15; // metres; our choice

void bake_occlusion(Mesh& mesh, const shape::VineShape& vine);

// What a mesh knew of the sky, kept while it is built anew.
struct KeptOcclusion {
    KeptOcclusion() = default;
    explicit KeptOcclusion(const Mesh& mesh);
    std::vector<Part> parts;
    std::vector<std::uint32_t> first;    // vertex of each part, and one past the last
    std::vector<std::uint8_t> open;      // by vertex
};

// The same as bake_occlusion to the byte, where `kept` comes from the mesh of `before`: only what stands within reach of
// wood that came or went is worked out again.
void bake_occlusion(Mesh& mesh, const shape::VineShape& vine, const shape::VineShape& before, const KeptOcclusion& kept);

} // namespace spurwright::mesh
