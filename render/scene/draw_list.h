// What the picture shows, before any graphics call: ranges of two meshes with what is done to them, a camera, a light.
// Tests and screens read this; gl/ only obeys it. Must not know: the tables, OpenGL.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "render/mesh/mesh.h"
#include "render/scene/camera.h"
#include "render/scene/light.h"

namespace spurwright::scene {

enum class Of : unsigned char { vine, surroundings, brush, falling }; // which mesh a range lies in
inline constexpr std::size_t of_count = 4;

// How a part is set off from the others. Colours are for data: they are written after tone mapping.
struct Look {
    glm::vec3 colour{0};
    float tint = 0;       // 0 to 1, mixed into the wood
    float dim = 0;        // 0 to 1, towards the fog
    float outline_px = 0; // with a 1 px dark edge
    bool hidden = false;
    bool operator==(const Look&) const = default;
};

struct Drawn {
    Of of{};
    mesh::Material material{};
    std::uint32_t first = 0, count = 0; // indices within the material
    Look look;
};

// A look for all parts of one axis (buds and faces too), or with `kind` and `id` for one part alone.
struct Emphasis {
    AxisId axis;
    std::optional<mesh::PartKind> kind;
    std::uint32_t id = 0;
    Look look;
    bool passing = false; // comes and goes with the pointer: drawn over the finished picture, which stays
};

struct DrawList {
    std::vector<Drawn> items;
    std::vector<Drawn> over; // drawn over the finished picture of `items`: passing looks, what falls
    Camera camera;
    Light light;
    bool plain = false;                       // without neighbours, rows and horizon
    float spacing = 1.8f, row_spacing = 2.4f; // metres; where feet darken the soil
};

// Lays a whole mesh, as it is, into a list of its own.
void add_whole(std::vector<Drawn>& list, Of of, const mesh::Mesh& mesh);

// Later entries of `emphases` win. Neighbouring ranges of one look are one item.
DrawList draw_list(const mesh::Mesh& vine, const mesh::Mesh& surroundings, std::span<const Emphasis> emphases,
                   const Camera& camera, const Light& light, bool plain = false);

} // namespace spurwright::scene
