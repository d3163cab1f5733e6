#include "render/mesh/vine_mesh.h"

#include "render/mesh/backdrop_mesh.h"
#include "render/mesh/bud_mesh.h"
#include "render/mesh/ground_mesh.h"
#include "render/mesh/hanger_mesh.h"
#include "render/mesh/head_mesh.h"
#include "render/mesh/occlusion.h"
#include "render/mesh/stem_mesh.h"
#include "render/mesh/trellis_mesh.h"

namespace spurwright::mesh {
namespace {

// The wood of a shape and what sits on it.
void add_wood(Writer& writer, const shape::VineShape& shape, const Detail& detail) {
    for (std::size_t i = 0; i < shape.stems.size(); ++i) add_stem(writer, shape, i, detail);
    for (const auto& bud : shape.buds) add_bud(writer, shape, bud, detail);
    for (const auto& hanger : shape.hangers) add_hanger(writer, shape, hanger, detail);
    for (const auto& wound : shape.wounds) add_wound(writer, shape, wound, detail);
}

} // namespace

void build_vine(Mesh& mesh, const shape::VineShape& vine, const Detail& detail) {
    mesh.clear();
    Writer writer(mesh);
    add_wood(writer, vine, detail);
    add_knobs(writer, vine, detail);
    add_strips(writer, vine, detail);
    for (const auto& tie : vine.ties) add_tie(writer, tie, detail);
    add_trellis(writer, vine, detail);
}

void rebuild_vine(Mesh& mesh, const KeptOcclusion& kept, const shape::VineShape& before, const shape::VineShape& vine, const Detail& detail) {
    build_vine(mesh, vine, detail);
    bake_occlusion(mesh, vine, before, kept);
}

void build_surroundings(Mesh& mesh, const shape::VineShape& vine, const Detail& detail) {
    mesh.clear();
    Writer writer(mesh);
    add_ground(writer, detail);
    add_straw(writer, vine.row_spacing, detail);
    add_tufts(writer, vine.row_spacing, detail);
    add_neighbours(writer, vine, detail);
    add_rows(writer, vine);
}

void build_brush(Mesh& mesh, const shape::VineShape& piece, const Detail& detail) {
    mesh.clear();
    Writer writer(mesh);
    add_wood(writer, piece, detail);
}

} // namespace spurwright::mesh
