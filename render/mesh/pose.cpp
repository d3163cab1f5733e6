#include "render/mesh/pose.h"

#include "render/mesh/octahedral.h"
#include "sim/core/check.h"

namespace spurwright::mesh {
namespace {

Vec3 read(const float (&from)[3]) { return {static_cast<double>(from[0]), static_cast<double>(from[1]), static_cast<double>(from[2])}; }

void write(float (&to)[3], Vec3 v) {
    to[0] = static_cast<float>(v.x);
    to[1] = static_cast<float>(v.y);
    to[2] = static_cast<float>(v.z);
}

} // namespace

void add_posed(Mesh& to, const Mesh& body, const Pose& pose) {
    SPURWRIGHT_CHECK(to.parts.size() + body.parts.size(), <, std::size_t{65'535});
    const auto first_vertex = static_cast<std::uint32_t>(to.vertices.size());
    const auto first_part = static_cast<std::uint16_t>(to.parts.size());
    for (Vertex v : body.vertices) {
        write(v.position, pose.of(read(v.position)));
        write(v.normal, pose.turned(read(v.normal)));
        set_octahedral(v.axis, pose.turned(from_octahedral(v.axis)));
        v.part = static_cast<std::uint16_t>(v.part + first_part);
        to.vertices.push_back(v);
    }
    for (Part part : body.parts) {
        part.first += static_cast<std::uint32_t>(to.indices[static_cast<std::size_t>(part.material)].size());
        to.parts.push_back(part);
    }
    for (std::size_t m = 0; m < material_count; ++m)
        for (const std::uint32_t i : body.indices[m]) to.indices[m].push_back(first_vertex + i);
}

} // namespace spurwright::mesh
