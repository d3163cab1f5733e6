// The whole picture's triangles from a vine's shape: rebuilt as one after each edit, since that costs less than keeping
// track of what changed. Must not know: the tables, rules, OpenGL.
#pragma once

#include "render/mesh/detail.h"
#include "render/mesh/mesh.h"
#include "render/mesh/occlusion.h"
#include "sim/shape/vine_shape.h"

namespace spurwright::mesh {

// Replaces what `mesh` held with the vine, its wounds, ties and trellis. Keeps its memory.
void build_vine(Mesh& mesh, const shape::VineShape& vine, const Detail& detail);

// The vine with its light: the same as build_vine and bake_occlusion to the byte, quicker where `kept` comes
// from the mesh of `before`.
void rebuild_vine(Mesh& mesh, const KeptOcclusion& kept, const shape::VineShape& before, const shape::VineShape& vine, const Detail& detail);

// Replaces what `mesh` held with ground, straw, neighbours, rows and horizon: does not change with an edit.
void build_surroundings(Mesh& mesh, const shape::VineShape& vine, const Detail& detail);

// A piece that was cut off, alone, as it stood: its wood, buds, hangers and faces.
void build_brush(Mesh& mesh, const shape::VineShape& piece, const Detail& detail);

} // namespace spurwright::mesh
