#include "render/mesh/occlusion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace spurwright::mesh {
namespace {

// Our choice: sums over many thin canes come out pale without `strength`; one cane never hides all; of its own wood a
// place sees only what bends back towards it.
constexpr float strength = 1.7f, most_hidden = 0.8f, own_radii = 2.2f;

struct Wood {
    float ax, ay, az, dx, dy, dz, size, radius; // from a, unit direction, length
    std::uint32_t axis;
};

// The room in which wood matters to a place.
struct Room {
    float low[3] = {1e9f, 1e9f, 1e9f}, high[3] = {-1e9f, -1e9f, -1e9f};
    void widen(const Room& other) {
        for (int k = 0; k < 3; ++k) low[k] = std::min(low[k], other.low[k]), high[k] = std::max(high[k], other.high[k]);
    }
    bool meets(const Room& other) const {
        for (int k = 0; k < 3; ++k)
            if (other.low[k] > high[k] || other.high[k] < low[k]) return false;
        return true;
    }
    bool holds(const float (&p)[3]) const {
        return p[0] > low[0] && p[0] < high[0] && p[1] > low[1] && p[1] < high[1] && p[2] > low[2] && p[2] < high[2];
    }
};

Room room_of(const Wood& w) {
    constexpr float rounding = 1e-4f; // metres: a place on the edge is within
    const float a[3] = {w.ax, w.ay, w.az}, d[3] = {w.dx, w.dy, w.dz};
    Room room;
    for (int k = 0; k < 3; ++k) {
        const float b = a[k] + d[k] * w.size, reach = w.radius + static_cast<float>(occlusion_reach) + rounding;
        room.low[k] = std::min(a[k], b) - reach;
        room.high[k] = std::max(a[k], b) + reach;
    }
    return room;
}

// Whether a place is within reach of any of these.
class Reach {
public:
    explicit Reach(const std::vector<Wood>& wood) {
        for (const Wood& w : wood) {
            rooms_.push_back(room_of(w));
            all_.widen(rooms_.back());
        }
    }
    bool meets(const Room& room) const { return all_.meets(room); }
    bool holds(const float (&p)[3]) const {
        if (!all_.holds(p)) return false;
        return std::any_of(rooms_.begin(), rooms_.end(), [&](const Room& room) { return room.holds(p); });
    }

private:
    Room all_;
    std::vector<Room> rooms_;
};

// Cells of a grid that hold the wood within reach of any place in them.
class Grid {
public:
    // Of the wood that matters to places within `reach`; null: of all.
    Grid(const std::vector<Wood>& wood, const Reach* reach) {
        std::vector<std::pair<std::uint32_t, Room>> held;
        for (std::uint32_t i = 0; i < wood.size(); ++i) {
            const Room room = room_of(wood[i]);
            if (reach && !reach->meets(room)) continue;
            held.push_back({i, room});
            all_.widen(room);
        }
        for (int k = 0; k < 3; ++k) count_[k] = std::clamp(static_cast<int>((all_.high[k] - all_.low[k]) / cell) + 1, 1, most_cells);
        cells_.resize(static_cast<std::size_t>(count_[0] * count_[1] * count_[2]));
        for (const auto& [i, room] : held) {
            int from[3], to[3];
            for (int k = 0; k < 3; ++k) from[k] = index(k, room.low[k]), to[k] = index(k, room.high[k]);
            for (int x = from[0]; x <= to[0]; ++x)
                for (int y = from[1]; y <= to[1]; ++y)
                    for (int z = from[2]; z <= to[2]; ++z) cells_[at(x, y, z)].push_back(i);
        }
    }

    const std::vector<std::uint32_t>* near(const float (&p)[3]) const {
        for (int k = 0; k < 3; ++k)
            if (p[k] < all_.low[k] || p[k] >= all_.low[k] + cell * static_cast<float>(count_[k])) return nullptr;
        return &cells_[at(index(0, p[0]), index(1, p[1]), index(2, p[2]))];
    }

private:
    static constexpr float cell = 0.09f; // metres, and how many of them each way: what was quickest to bake
    static constexpr int most_cells = 96;
    int index(int k, float v) const { return std::clamp(static_cast<int>((v - all_.low[k]) / cell), 0, count_[k] - 1); }
    std::size_t at(int x, int y, int z) const { return static_cast<std::size_t>((x * count_[1] + y) * count_[2] + z); }
    Room all_;
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
    if (own && away < own_radii * w.radius) return 0;
    const float facing = (nx * v.normal[0] + ny * v.normal[1] + nz * v.normal[2]) / away;
    if (facing <= 0) return 0;
    const float line2 = std::max(1e-8f, px * px + py * py + pz * pz - s * s), line = std::sqrt(line2);
    const float s1 = -s, s2 = w.size - s;
    const float span = 0.5f * (s2 / std::sqrt(s2 * s2 + line2) - s1 / std::sqrt(s1 * s1 + line2));
    const float fade = 1 - std::clamp((away - w.radius) / static_cast<float>(occlusion_reach), 0.0f, 1.0f);
    return std::min(most_hidden, strength * std::min(1.0f, w.radius / line) * facing * span * fade);
}

void add_wood(std::vector<Wood>& wood, const shape::Stem& stem) {
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

void add_wood(std::vector<Wood>& wood, const shape::CrownShape& crown) {
    const Vec3 a = crown.middle - Vec3{0, 0.1 * crown.radius, 0};
    wood.push_back({static_cast<float>(a.x), static_cast<float>(a.y), static_cast<float>(a.z), 0, 1, 0,
                    static_cast<float>(0.2 * crown.radius), static_cast<float>(crown.radius), 0});
}

bool same(const shape::Stem& a, const shape::Stem& b) {
    const auto &p = a.line.points(), &q = b.line.points();
    return p.size() == q.size() && std::equal(p.begin(), p.end(), q.begin(), [](const auto& x, const auto& y) {
               return x.place == y.place && x.radii.major == y.radii.major && x.radii.minor == y.radii.minor;
           });
}

bool same(const shape::CrownShape& a, const shape::CrownShape& b) { return a.middle == b.middle && a.radius == b.radius; }

bool casts_and_catches(PartKind kind) { return kind != PartKind::wire && kind != PartKind::post && kind != PartKind::clip; }

// Buds and hangers are small: one sample tells for all of them.
bool is_small(PartKind kind) { return kind == PartKind::bud || kind == PartKind::tendril || kind == PartKind::bunch; }

std::uint8_t open_share(const std::vector<Wood>& wood, const std::vector<std::uint32_t>& near, const Vertex& v, std::uint32_t axis) {
    float open = 1;
    for (const std::uint32_t i : near) open *= 1 - hidden(wood[i], v, wood[i].axis == axis);
    return static_cast<std::uint8_t>(255 * open + 0.5f);
}

constexpr std::uint32_t no_part = ~0u;

// Of each part, and one past the last.
std::vector<std::uint32_t> first_vertices(const Mesh& mesh) {
    std::vector<std::uint32_t> first(mesh.parts.size() + 1, 0);
    for (const Vertex& v : mesh.vertices) ++first[std::size_t{v.part} + 1];
    for (std::size_t i = 1; i < first.size(); ++i) first[i] += first[i - 1];
    return first;
}

// Parts by what they show; several of one name follow each other in the same order in every mesh of a vine.
using PartKey = std::array<std::uint32_t, 5>;
std::vector<std::pair<PartKey, std::uint32_t>> keyed(const std::vector<Part>& parts) {
    std::vector<std::pair<PartKey, std::uint32_t>> list;
    for (std::uint32_t i = 0; i < parts.size(); ++i)
        list.push_back({{static_cast<std::uint32_t>(parts[i].kind), static_cast<std::uint32_t>(parts[i].material), parts[i].axis.value, parts[i].id, 0}, i});
    std::stable_sort(list.begin(), list.end());
    for (std::size_t i = 1; i < list.size(); ++i)
        if (std::equal(list[i].first.begin(), list[i].first.begin() + 4, list[i - 1].first.begin())) list[i].first[4] = list[i - 1].first[4] + 1;
    return list;
}

// For each part the one of the mesh before that shows the same wood, standing as it stood; no_part where none does.
std::vector<std::uint32_t> parts_as_before(const Mesh& mesh, const std::vector<std::uint32_t>& first, const shape::VineShape& vine, const shape::VineShape& before,
                                           const KeptOcclusion& kept) {
    std::vector<std::uint32_t> old_of(mesh.parts.size(), no_part);
    const auto made = keyed(mesh.parts), old = keyed(kept.parts);
    for (std::size_t a = 0, b = 0; a < made.size() && b < old.size();) {
        if (made[a].first < old[b].first) ++a;
        else if (old[b].first < made[a].first) ++b;
        else {
            const std::uint32_t is = made[a++].second, was = old[b++].second;
            const AxisId axis = mesh.parts[is].axis;
            const auto *stem = vine.find(axis), *stem_was = before.find(axis);
            const bool stands = !axis || (stem && stem_was && same(*stem, *stem_was));
            if (stands && first[is + 1] - first[is] == kept.first[was + 1] - kept.first[was]) old_of[is] = was;
        }
    }
    return old_of;
}

} // namespace

void bake_occlusion(Mesh& mesh, const shape::VineShape& vine) {
    bake_occlusion(mesh, vine, {}, {});
}

KeptOcclusion::KeptOcclusion(const Mesh& mesh) : parts(mesh.parts), first(first_vertices(mesh)) {
    open.reserve(mesh.vertices.size());
    for (const Vertex& v : mesh.vertices) open.push_back(v.occlusion);
}

void bake_occlusion(Mesh& mesh, const shape::VineShape& vine, const shape::VineShape& before, const KeptOcclusion& kept) {
    std::vector<Wood> wood, changed;
    for (const auto& stem : vine.stems) {
        add_wood(wood, stem);
        if (const auto* was = before.find(stem.axis); !was || !same(*was, stem)) add_wood(changed, stem);
    }
    for (const auto& stem : before.stems)
        if (const auto* is = vine.find(stem.axis); !is || !same(*is, stem)) add_wood(changed, stem);
    for (const auto& crown : vine.swellings) add_wood(wood, crown);
    const bool same_head = vine.swellings.size() == before.swellings.size() &&
                           std::equal(vine.swellings.begin(), vine.swellings.end(), before.swellings.begin(),
                                      [](const auto& a, const auto& b) { return same(a, b); });
    for (const auto* list : {&vine.swellings, &before.swellings})
        for (const auto& crown : *list)
            if (!same_head) add_wood(changed, crown);
    if (wood.empty()) return;
    const Reach reach(changed);
    const Grid grid(wood, &reach);
    std::optional<Grid> whole;  // for what is new and stands elsewhere
    const std::vector<std::uint32_t> first = first_vertices(mesh);
    const std::vector<std::uint32_t> old_of = parts_as_before(mesh, first, vine, before, kept);
    std::uint16_t small_part = 65'535;
    std::uint8_t small_open = 255;
    for (std::size_t i = 0; i < mesh.vertices.size(); ++i) {
        Vertex& v = mesh.vertices[i];
        const PartKind kind = mesh.parts[v.part].kind;
        if (!casts_and_catches(kind)) continue;
        if (is_small(kind) && v.part == small_part) {
            v.occlusion = small_open;
            continue;
        }
        const std::uint32_t was = old_of[v.part];
        const bool reached = reach.holds(v.position);
        if (!reached && was == no_part && !whole) whole.emplace(wood, nullptr);
        if (!reached && was != no_part) {
            v.occlusion = kept.open[kept.first[was] + (i - first[v.part])];
        } else if (const auto* near = reached ? grid.near(v.position) : whole->near(v.position)) {
            v.occlusion = open_share(wood, *near, v, mesh.parts[v.part].axis.value);
        } else {
            continue;
        }
        if (is_small(kind)) small_part = v.part, small_open = v.occlusion;
    }
}

} // namespace spurwright::mesh
