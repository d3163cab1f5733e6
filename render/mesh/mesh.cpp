#include "render/mesh/mesh.h"

#include "render/mesh/octahedral.h"
#include "sim/core/check.h"

namespace spurwright::mesh {
std::size_t Mesh::triangle_count() const {
    std::size_t sum = 0;
    for (const auto& list : indices) sum += list.size() / 3;
    return sum;
}

void Mesh::clear() {
    vertices.clear();
    for (auto& list : indices) list.clear();
    parts.clear();
}

void Mesh::keep_parts() {
    vertices = std::vector<Vertex>();  // `= {}` would only empty it
    indices = {};
}

void Writer::begin(PartKind kind, Material material, AxisId axis, std::uint32_t id) {
    SPURWRIGHT_CHECK(mesh_.parts.size(), <, std::size_t{65'535});
    list_ = &mesh_.indices[static_cast<std::size_t>(material)];
    part_ = static_cast<std::uint16_t>(mesh_.parts.size());
    mesh_.parts.push_back({kind, material, axis, id, static_cast<std::uint32_t>(list_->size()), 0});
    age = flags = node = 0;
    occlusion = 255;
    along = {0, 1, 0};
}

void Writer::end() {
    Part& part = mesh_.parts.back();
    part.count = static_cast<std::uint32_t>(list_->size()) - part.first;
}

std::uint32_t Writer::vertex(Vec3 p, Vec3 n, double u, double v) {
    Vertex out;
    out.position[0] = static_cast<float>(p.x);
    out.position[1] = static_cast<float>(p.y);
    out.position[2] = static_cast<float>(p.z);
    out.normal[0] = static_cast<float>(n.x);
    out.normal[1] = static_cast<float>(n.y);
    out.normal[2] = static_cast<float>(n.z);
    out.u = static_cast<float>(u);
    out.v = static_cast<float>(v);
    out.part = part_;
    if (!(along == coded_along_)) {
        set_octahedral(coded_, along);
        coded_along_ = along;
    }
    out.axis[0] = coded_[0];
    out.axis[1] = coded_[1];
    out.age = age;
    out.occlusion = occlusion;
    out.node = node;
    out.flags = flags;
    mesh_.vertices.push_back(out);
    return static_cast<std::uint32_t>(mesh_.vertices.size() - 1);
}

} // namespace spurwright::mesh
