// A vine as a glTF 2.0 binary file: one node an organ, with what the tables say of it in its extras, one scene a variant.
// Metres, +Y up, as the format asks (Khronos Group, glTF 2.0, from memory). Must not know: words, OpenGL, where files lie.
#pragma once

#include <span>
#include <string>

#include "sim/vine/vine.h"

namespace spurwright::app {

// One state of one vine; the first of a file is what a reader opens with.
struct GltfVariant {
    std::string name;
    const Vine* vine = nullptr;
};

struct GltfFile {
    std::string bytes;
    std::size_t organs = 0, buds = 0, triangles = 0;  // of all variants
};

// Wood, buds, tendrils, bunch stems, wounds, ties and the trellis, each as it is drawn. Left out: ground, straw, rows, the
// neighbours, bark textures, the light. Needs at least one variant. Extras of a node: id (of the tables, within its kind),
// kind, and where it has them wood_age (years), diameter_mm (of a stem: as everyone measures it, over joints 2 and 3),
// length_mm (of a stem, along the wood that stands), parent (id of the axis that bears it; 0 for what no wood bears).
GltfFile gltf_file(std::span<const GltfVariant> variants);

}  // namespace spurwright::app
