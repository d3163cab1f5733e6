#include "render/scene/draw_list.h"

namespace spurwright::scene {
namespace {

// The latest look that is meant for this part; none where nothing is.
std::optional<Look> look_of(const mesh::Part& part, std::span<const Emphasis> emphases, bool passing) {
    std::optional<Look> look;
    for (const Emphasis& e : emphases) {
        const bool meant = e.kind ? part.kind == *e.kind && part.id == e.id : e.axis && part.axis == e.axis;
        if (meant && e.passing == passing) look = e.look;
    }
    if (look && part.material == mesh::Material::thin) look->outline_px = 0; // a line round a line is a tangle
    return look;
}

bool is_surrounding(mesh::PartKind kind) {
    return kind == mesh::PartKind::neighbour || kind == mesh::PartKind::row || kind == mesh::PartKind::horizon;
}

// Neighbouring ranges of one look are one item.
void add(std::vector<Drawn>& list, Of of, const mesh::Part& part, const Look& look) {
    if (look.hidden || part.count == 0) return;
    if (!list.empty()) {
        Drawn& last = list.back();
        if (last.of == of && last.material == part.material && last.look == look && last.first + last.count == part.first) {
            last.count += part.count;
            return;
        }
    }
    list.push_back({of, part.material, part.first, part.count, look});
}

} // namespace

void add_whole(std::vector<Drawn>& list, Of of, const mesh::Mesh& mesh) {
    for (std::size_t m = 0; m < mesh::material_count; ++m)
        if (!mesh.indices[m].empty()) list.push_back({of, static_cast<mesh::Material>(m), 0, static_cast<std::uint32_t>(mesh.indices[m].size()), {}});
}

DrawList draw_list(const mesh::Mesh& vine, const mesh::Mesh& surroundings, std::span<const Emphasis> emphases,
                   const Camera& camera, const Light& light, bool plain) {
    DrawList list;
    list.camera = camera;
    list.light = light;
    list.plain = plain;
    // Parts of one material follow each other within its indices, so ranges join up.
    for (std::size_t m = 0; m < mesh::material_count; ++m) {
        const auto material = static_cast<mesh::Material>(m);
        for (const mesh::Part& part : vine.parts) {
            if (part.material != material) continue;
            add(list.items, Of::vine, part, look_of(part, emphases, false).value_or(Look{}));
            if (const auto look = look_of(part, emphases, true)) add(list.over, Of::vine, part, *look);
        }
        for (const mesh::Part& part : surroundings.parts)
            if (part.material == material && (!plain || !is_surrounding(part.kind))) add(list.items, Of::surroundings, part, {});
    }
    return list;
}

} // namespace spurwright::scene
