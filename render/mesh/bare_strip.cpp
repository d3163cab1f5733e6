#include "render/mesh/bare_strip.h"

#include <algorithm>
#include <cmath>

namespace spurwright::mesh {
namespace {

constexpr double sunk = 0.95; // of the radius, at the flat's edges; our choice

double half_width_at(const shape::DeadStrip& strip, double from_root) {
    if (from_root < strip.from || from_root > strip.to + strip.half_width) return 0;
    const double up = (from_root - strip.from) / (strip.to - strip.from);
    const double over = std::max(0.0, from_root - strip.to) / strip.half_width;
    return strip.half_width * std::sqrt(std::min(up, 1.0)) * std::sqrt(std::max(0.0, 1 - over * over));
}

Vec3 vec_of(const float (&v)[3]) { return {static_cast<double>(v[0]), static_cast<double>(v[1]), static_cast<double>(v[2])}; }

void put(float (&to)[3], Vec3 v) {
    to[0] = static_cast<float>(v.x);
    to[1] = static_cast<float>(v.y);
    to[2] = static_cast<float>(v.z);
}

// Nothing where the corner looks away from the strip.
void flatten(Vertex& v, const Ring& ring, Vec3 bare, double edge, double radius) {
    const Vec3 place = vec_of(v.position), out = place - ring.centre;
    const double far = shape::length(out), facing = shape::dot(out, bare);
    if (far < 1e-9 || facing < edge * far) return;
    put(v.position, place - std::max(0.0, facing - sunk * edge * radius) * bare);
    put(v.normal, shape::unit(shape::lerp(vec_of(v.normal), bare, 0.8), bare));
    v.flags = static_cast<std::uint8_t>(v.flags | dead);
}

} // namespace

void lay_bare(Mesh& mesh, std::uint32_t first, int sides, std::span<const Ring> rings, std::span<const double> from_root,
              const shape::DeadStrip& strip) {
    for (std::size_t i = 0; i < rings.size(); ++i) {
        const double radius = (rings[i].across_out + rings[i].across_side) / 2, half = half_width_at(strip, from_root[i]);
        if (half <= 0) continue;
        const Vec3 bare = shape::square_part(strip.out, rings[i].along);
        const double edge = std::cos(half / radius);
        for (int j = 0; j <= sides; ++j)
            flatten(mesh.vertices[first + static_cast<std::uint32_t>(i) * static_cast<std::uint32_t>(sides + 1) + static_cast<std::uint32_t>(j)], rings[i], bare, edge, radius);
    }
}

} // namespace spurwright::mesh
