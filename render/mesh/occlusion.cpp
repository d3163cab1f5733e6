#include "render/mesh/occlusion.h"

#include <algorithm>
#include <cmath>

namespace spurwright::mesh {
namespace {

constexpr float strength = 1.7f; // sums over many thin canes come out pale without it; our choice

struct Wood {
    float ax, ay, az, dx, dy, dz, size, radius; // from a, unit direction, length
    std::uint32_t axis;
};

// Cells of a grid that hold the wood within reach of any place in them.
class Grid {
public:
    explicit Grid(const std::vector<Wood>& wood) {
        low_[0] = low_[1] = low_[2] = 1e9f;
        float high[3] = {-1e9f, -1e9f, -1e9f};
        const auto bounds = [&](const Wood& w, float(&lo)[3], float(&hi)[3]) {
            const float a[3] = {w.ax, w.ay, w.az}, d[3] = {w.dx, w.dy, w.dz};
            for (int k = 0; k < 3; ++k) {
                const float b = a[k] + d[k] * w.size, reach = w.radius + static_cast<float>(occlusion_reach);
                lo[k] = std::min(a[k], b) - reach;
                hi[k] = std::max(a[k], b) + reach;
            }
        };
        float lo[3], hi[3];
        for (const Wood& w : wood) {
            bounds(w, lo, hi);
            for (int k = 0; k < 3; ++k) low_[k] = std::min(low_[k], lo[k]), high[k] = std::max(high[k], hi[k]);
        }
        for (int k = 0; k < 3; ++k) count_[k] = std::clamp(static_cast<int>((high[k] - low_[k]) / cell) + 1, 1, 96);
        cells_.resize(static_cast<std::size_t>(count_[0] * count_[1] * count_[2]));
        for (std::uint32_t i = 0; i < wood.size(); ++i) {
            bounds(wood[i], lo, hi);
            int from[3], to[3];
            for (int k = 0; k < 3; ++k) from[k] = index(k, lo[k]), to[k] = index(k, hi[k]);
            for (int x = from[0]; x <= to[0]; ++x)
                for (int y = from[1]; y <= to[1]; ++y)
                    for (int z = from[2]; z <= to[2]; ++z) cells_[at(x, y, z)].push_back(i);
        }
    }

    const std::vector<std::uint32_t>* near(const float (&p)[3]) const {
        for (int k = 0; k < 3; ++k)
            if (p[k] < low_[k] || p[k] >= low_[k] + cell * static_cast<float>(count_[k])) return nullptr;
        return &cells_[at(index(0, p[0]), index(1, p[1]), index(2, p[2]))];
    }

private:
    static constexpr float cell = 0.09f;
    int index(int k, float v) const { return std::clamp(static_cast<int>((v - low_[k]) / cell), 0, count_[k] - 1); }
    std::size_t at(int x, int y, int z) const { return static_cast<std::size_t>((x * count_[1] + y) * count_[2] + z); }
    float low_[3];
    int count_[3];
    std::vector<std::vector<std::uint32_t>> cells_;
};

float hidden(const Wood& w, const Vertex& v, bool own) {
    const float px = v.position[0] - w.ax, py = v.position[1] - w.ay, pz = v.position[2] - w.az;
    const float s = px * w.dx + py * w.dy + pz * w.dz;
    const float t = std::clamp(s, 0.0f, w.size);
    // From the vertex to the nearest place on the capsule's middle.
    const float nx = t * w.dx - px, ny = t * w.dy - py, nz = t * w.dz - pz;
    const float away2 = nx * nx + ny * ny + nz * nz, away = std::sqrt(away2);
    if (away > w.radius + static_cast<float>(occlusion_reach) || away < 1e-6f) return 0;
    if (own && away < 2.2f * w.radius) return 0;
    const float facing = (nx * v.normal[0] + ny * v.normal[1] + nz * v.normal[2]) / away;
    if (facing <= 0) return 0;
    const float line2 = std::max(1e-8f, px * px + py * py + pz * pz - s * s), line = std::sqrt(line2);
    const float s1 = -s, s2 = w.size - s;
    const float span = 0.5f * (s2 / std::sqrt(s2 * s2 + line2) - s1 / std::sqrt(s1 * s1 + line2));
    const float fade = 1 - std::clamp((away - w.radius) / static_cast<float>(occlusion_reach), 0.0f, 1.0f);
    return std::min(0.8f, strength * std::min(1.0f, w.radius / line) * facing * span * fade);
}

} // namespace

void bake_occlusion(Mesh& mesh, const shape::VineShape& vine) {
    std::vector<Wood> wood;
    for (const auto& stem : vine.stems) {
        const auto& points = stem.line.points();
        for (std::size_t s = 0; s + 1 < points.size(); ++s) {
            const Vec3 d = points[s + 1].place - points[s].place;
            const double size = shape::length(d);
            const Vec3 u = shape::unit(d);
            const Vec3 a = points[s].place;
            wood.push_back({static_cast<float>(a.x), static_cast<float>(a.y), static_cast<float>(a.z),
                            static_cast<float>(u.x), static_cast<float>(u.y), static_cast<float>(u.z),
                            static_cast<float>(size), static_cast<float>(points[s + 1].radii.mean()), stem.axis.value});
        }
    }
    for (const auto& crown : vine.swellings) {
        const Vec3 a = crown.middle - Vec3{0, 0.1 * crown.radius, 0};
        wood.push_back({static_cast<float>(a.x), static_cast<float>(a.y), static_cast<float>(a.z), 0, 1, 0,
                        static_cast<float>(0.2 * crown.radius), static_cast<float>(crown.radius), 0});
    }
    if (wood.empty()) return;
    const Grid grid(wood);
    std::uint16_t small_part = 65'535;
    std::uint8_t small_open = 255;
    for (Vertex& v : mesh.vertices) {
        // Buds and hangers are small: one sample tells for all of them.
        const PartKind kind = mesh.parts[v.part].kind;
        if (kind == PartKind::wire || kind == PartKind::post || kind == PartKind::clip) continue;
        const bool small = kind == PartKind::bud || kind == PartKind::tendril || kind == PartKind::bunch;
        if (small && v.part == small_part) {
            v.occlusion = small_open;
            continue;
        }
        const auto* near = grid.near(v.position);
        if (!near) continue;
        const std::uint32_t axis = mesh.parts[v.part].axis.value;
        float open = 1;
        for (const std::uint32_t i : *near) open *= 1 - hidden(wood[i], v, wood[i].axis == axis);
        v.occlusion = static_cast<std::uint8_t>(255 * open + 0.5f);
        if (small) small_part = v.part, small_open = v.occlusion;
    }
}

} // namespace spurwright::mesh
