// Triangles of one picture, grouped by material, and the parts they belong to. Buffers keep their memory from one
// rebuild to the next: the first touch of new memory costs more than the building. No OpenGL here.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "render/mesh/vertex.h"
#include "sim/core/ids.h"
#include "sim/shape/vec3.h"

namespace spurwright::mesh {

using shape::Vec3;

enum class Material : std::uint8_t {
    cane,
    two_year,
    old,
    bud,
    dry,
    face,
    timber,
    metal,
    rubber,
    twine,
    leaf,
    ground,
    card,
    backdrop,
    thin
};
inline constexpr std::size_t material_count = 15;

enum class PartKind : std::uint8_t {
    stem,
    bud,
    tendril,
    bunch,
    face,
    head,
    strips,
    tie,
    wire,
    clip,
    drip,
    stake,
    post,
    ground,
    straw,
    neighbour,
    row,
    horizon
};

// What one range of triangles shows. Names are those of the tables; 0 where it has none.
struct Part {
    PartKind kind{};
    Material material{};
    AxisId axis;                        // the stem it belongs to
    std::uint32_t id = 0;               // of the node, bud, wound, tie or wire, by kind
    std::uint32_t first = 0, count = 0; // indices within its material
};

struct Mesh {
    std::vector<Vertex> vertices;
    std::array<std::vector<std::uint32_t>, material_count> indices;
    std::vector<Part> parts;

    std::size_t triangle_count() const;
    void clear(); // keeps the memory
    void keep_parts(); // gives the memory of all else back: what is drawn lies with the driver
};

// Adds to a mesh, one part at a time.
class Writer {
public:
    explicit Writer(Mesh& mesh) : mesh_(mesh) {}

    void begin(PartKind kind, Material material, AxisId axis = {}, std::uint32_t id = 0);
    void end();

    // What every vertex carries until changed.
    std::uint8_t age = 0, flags = 0, node = 0, occlusion = 255;
    Vec3 along{0, 1, 0};

    std::uint32_t vertex(Vec3 place, Vec3 normal, double u, double v);
    void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        auto& list = *list_;
        list.push_back(a);
        list.push_back(b);
        list.push_back(c);
    }
    Mesh& mesh() { return mesh_; }

private:
    Mesh& mesh_;
    std::vector<std::uint32_t>* list_ = nullptr;
    std::uint16_t part_ = 0;
    Vec3 coded_along_{};  // the direction whose bytes are kept: all of a ring have one
    std::int8_t coded_[2]{};
};

} // namespace spurwright::mesh
