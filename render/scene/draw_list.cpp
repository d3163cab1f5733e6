#include "render/scene/draw_list.h"

namespace spurwright::scene {
namespace {

Look look_of(const mesh::Part& part, std::span<const Emphasis> emphases) {
    Look look;
    for (const Emphasis& e : emphases) {
        const bool meant = e.kind ? part.kind == *e.kind && part.id == e.id : e.axis && part.axis == e.axis;
        if (meant) look = e.look;
    }
    if (part.material == mesh::Material::thin) look.outline_px = 0; // a line round a line is a tangle
    return look;
}

bool is_surrounding(mesh::PartKind kind) {
    return kind == mesh::PartKind::neighbour || kind == mesh::PartKind::row || kind == mesh::PartKind::horizon;
}

} // namespace

DrawList draw_list(const mesh::Mesh& vine, const mesh::Mesh& surroundings, std::span<const Emphasis> emphases,
                   const Camera& camera, const Light& light, bool plain) {
    DrawList list;
    list.camera = camera;
    list.light = light;
    list.plain = plain;
    // Parts of one material follow each other within its indices, so ranges join up.
    for (std::size_t m = 0; m < mesh::material_count; ++m) {
        const auto material = static_cast<mesh::Material>(m);
        const auto add = [&](Of of, const mesh::Part& part, const Look& look) {
            if (part.material != material || look.hidden || part.count == 0) return;
            if (!list.items.empty()) {
                Drawn& last = list.items.back();
                if (last.of == of && last.material == material && last.look == look &&
                    last.first + last.count == part.first) {
                    last.count += part.count;
                    return;
                }
            }
            list.items.push_back({of, material, part.first, part.count, look});
        };
        for (const mesh::Part& part : vine.parts) add(Of::vine, part, look_of(part, emphases));
        for (const mesh::Part& part : surroundings.parts)
            if (!plain || !is_surrounding(part.kind)) add(Of::surroundings, part, {});
    }
    return list;
}

} // namespace spurwright::scene
