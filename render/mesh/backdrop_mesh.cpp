#include "render/mesh/backdrop_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/ground_mesh.h"
#include "render/mesh/noise.h"

namespace spurwright::mesh {
namespace {

struct Plot {
    double x, z;
    std::uint32_t id;
};

TubeStyle plain(int sides) {
    TubeStyle style;
    style.sides = sides;
    style.finish = Close::pole;
    return style;
}

// Far wood: three open sides, two lengths. Never seen from its ends.
void stick(Writer& w, Vec3 low, Vec3 middle, Vec3 high, double radius) {
    constexpr double x[] = {0.0, 0.87, -0.87}, z[] = {1.0, -0.5, -0.5};
    std::uint32_t rings[3][3];
    const Vec3 at[] = {low, middle, high};
    w.along = {0, 1, 0};
    for (int r = 0; r < 3; ++r)
        for (int k = 0; k < 3; ++k)
            rings[r][k] = w.vertex(at[r] + Vec3{radius * x[k], 0, radius * z[k]}, {x[k], 0, z[k]}, k / 3.0, 4.0 * r);
    for (int r = 0; r < 2; ++r)
        for (int k = 0; k < 3; ++k) {
            const int next = (k + 1) % 3;
            w.triangle(rings[r][k], rings[r][next], rings[r + 1][next]);
            w.triangle(rings[r][k], rings[r + 1][next], rings[r + 1][k]);
        }
}

void trunk(Writer& w, Plot at, double height, double radius, int sides, std::uint32_t steps) {
    std::vector<Vec3> points;
    for (std::uint32_t k = 0; k <= steps; ++k) {
        const double share = static_cast<double>(k) / steps;
        points.push_back({at.x + 0.012 * noise::between(-1, 1, at.id, k) * (k > 0),
                          ground_height(at.x, at.z) - 0.03 + share * height,
                          at.z + 0.01 * noise::between(-1, 1, at.id, 40 + k) * (k > 0)});
    }
    TubeStyle style = plain(sides);
    style.u_tiles = 3;
    add_line(w, points, radius * 1.15, radius, style, 1 / 0.30);
}

// Weak shoots bunched under the hedge cut, some broken lower down: what keeps a row from looking like a comb.
void laterals(Writer& w, Vec3 low, Vec3 high, double radius, std::uint32_t id, int most) {
    for (int k = 0; k < most; ++k) {
        const auto nth = static_cast<std::uint32_t>(k);
        if (noise::unit(id, 30 + nth) < 0.35) continue;
        const double share = k == 0 ? noise::between(0.93, 0.99, id, 34) : noise::between(0.55, 0.95, id, 34 + nth);
        const double turn = 6.2832 * noise::unit(id, 40 + nth), size = noise::between(0.05, 0.15, id, 44 + nth);
        const Vec3 from = shape::lerp(low, high, share);
        const Vec3 tip = from + Vec3{0.75 * size * std::cos(turn), 0.6 * size, 0.5 * size * std::sin(turn)};
        stick(w, from, shape::lerp(from, tip, 0.5) + Vec3{0, -0.006, 0}, tip, 0.45 * radius);
    }
}

// One hedged at `top`, most of them: some weak ones end lower, a few lean out of the wires.
void cane(Writer& w, Vec3 from, double lean, double top, double radius, int sides, std::uint32_t id, int steps) {
    std::vector<Vec3> points;
    const double sort = noise::unit(id, 3);
    const double across = noise::between(-0.06, 0.06, id, 2) * (sort > 0.92 ? 4 : 1);
    const double reach = sort < 0.72 ? top : from.y + (top - from.y) * noise::between(0.35, 0.95, id, 4);
    const double elbow = noise::between(-0.045, 0.045, id, 6), bow = noise::between(-0.05, 0.05, id, 7);
    const auto at = [&](double share) {
        return Vec3{from.x + elbow * std::fmin(1.0, 12 * share) + lean * share + bow * std::sin(3.0 * share),
                    from.y + (reach - from.y) * share, from.z + across * std::sin(1.6 * share)};
    };
    if (steps <= 3) {
        stick(w, from, at(0.4), at(1), radius);
        if (radius > 0.0036) laterals(w, at(0.4), at(1), radius, id, from.z < -3 ? 1 : 2);
        return;
    }
    for (int k = 0; k <= steps; ++k) {
        const double share = static_cast<double>(k) / steps;
        // Node by node to one side and the other, as it grew.
        const double wander = 0.0035 * (k % 2 ? 1 : -1) + 0.006 * noise::between(-1, 1, id, 10 + static_cast<std::uint32_t>(k));
        points.push_back(at(share) + Vec3{wander, 0, 0.5 * wander});
    }
    add_line(w, points, radius, 0.7 * radius, plain(sides), 10);
    laterals(w, points[points.size() / 2], points.back(), radius, id, 3);
}

void vine_at(Writer& w, Plot at, const shape::VineShape& like, double near_end, double far_end, int sides,
             std::uint32_t steps, bool pruned, bool buds) {
    const double wire = like.trellis.fruiting_height, head = wire - 0.13, radius = noise::between(0.02, 0.03, at.id, 5);
    w.begin(PartKind::neighbour, Material::old, {}, at.id);
    w.flags = 0;
    w.age = 160;
    w.occlusion = 190;
    trunk(w, at, head + 0.03, radius, sides + 2, buds ? 5 : 3);
    add_blob(w, {at.x, head, at.z}, {0, 1, 0}, {1, 0, 0}, {1.5 * radius, 1.2 * radius, 1.1 * radius}, buds ? 5 : 3,
             sides + (buds ? 3 : 1), 0.12, noise::unit(at.id, 6));
    w.end();
    w.begin(PartKind::neighbour, Material::two_year, {}, at.id);
    w.occlusion = 210;
    w.age = 24;
    const double ends[] = {near_end, far_end};
    for (const double end : ends) {
        std::vector<Vec3> points;
        const double way = end < at.x ? -1 : 1, whole = std::fabs(end - at.x);
        points.push_back({at.x + 0.01 * way, head + 0.01, at.z});
        for (std::uint32_t k = 1; k <= steps; ++k) {
            const double share = static_cast<double>(k) / steps, x = whole * share;
            const double rise = std::fmin(1.0, x / 0.25);
            points.push_back({at.x + way * x,
                              head + 0.01 + (wire + 0.006 - head - 0.01) * rise * (2 - rise) - 0.006 * std::sin(7 * x),
                              at.z + 0.004 * std::sin(5 * x)});
        }
        add_line(w, points, 0.0065, 0.005, plain(sides), 1 / 0.12);
    }
    w.end();
    w.begin(PartKind::neighbour, Material::cane, {}, at.id);
    w.occlusion = 215;
    w.age = 8;
    if (!buds) w.flags = shaded;
    const double vigour = noise::between(0.75, 1.15, at.id, 7);
    const int count = pruned ? 4
                             : static_cast<int>((buds        ? 26
                                                 : at.z < -3 ? 15
                                                             : 20) *
                                                vigour * std::fabs(far_end - near_end) / 1.7);
    // From nodes of the arms, 60 to 120 mm apart, now and then two from one; a third of them stand about the head and fan out.
    double along = near_end + 0.03;
    for (int k = 0; k < count; ++k) {
        const auto id = at.id * 64 + static_cast<std::uint32_t>(k);
        const bool by_head = !pruned && k % 3 == 0;
        double x = at.x + noise::between(-0.05, 0.05, id, 8), low = wire - 0.10;
        double lean = (noise::unit(id, 11) < 0.5 ? -1 : 1) * noise::between(0.06, 0.30, id, 1);
        if (!by_head) {
            const double gap = 1.5 * (far_end - near_end - 0.06) / std::max(1, count);
            if (noise::unit(id, 12) > 0.22) along += gap * noise::between(0.55, 1.65, id, 13);
            if (along > far_end - 0.02) break;
            x = along + noise::between(-0.008, 0.008, id, 14);
            low = wire;
            lean = noise::between(-0.10, 0.10, id, 1);
        }
        const double thick = noise::unit(id, 10);
        cane(w, {x, low, at.z}, lean, like.trellis.hedge_height + noise::between(-0.02, 0.02, id, 9),
             (0.0026 + 0.0034 * thick * thick + 0.001 * by_head) * vigour, buds ? std::max(4, sides - 1) : 3, id, buds ? 12 : 3);
    }
    w.end();
}

} // namespace

void add_neighbours(Writer& w, const shape::VineShape& vine, const Detail& detail) {
    for (const auto& neighbour : vine.neighbours) {
        if (neighbour.kind != NeighbourKind::vine) continue;
        const double way = neighbour.x < 0 ? -1 : 1;
        const double inner = neighbour.cane_end, outer = neighbour.x + way * 0.42 * vine.spacing;
        const Plot at{neighbour.x, 0, neighbour.x < 0 ? 11u : 12u};
        vine_at(w, at, vine, std::min(inner, outer), std::max(inner, outer), std::min(6, detail.cane_sides), 12, false,
                true);
        for (int k = 2; k <= 4; ++k) { // farther down the same row
            const double x = way * k * vine.spacing;
            if (x < vine.trellis.near_end || x > vine.trellis.far_end) break;
            vine_at(w, {x, 0, static_cast<std::uint32_t>(20 + k + (way > 0 ? 10 : 0))}, vine, x - 0.46 * vine.spacing,
                    x + 0.46 * vine.spacing, 4, 5, false, false);
        }
    }
}

void add_rows(Writer& w, const shape::VineShape& vine) {
    // A row behind and one in front of the alley, three deep.
    for (const int row : {-1, -2, -3, 1}) {
        const double z = row * vine.row_spacing;
        const int reach = row == 1 ? 4 : 6;
        for (int k = -reach; k <= reach; ++k) {
            const auto id = static_cast<std::uint32_t>(1000 + 100 * (row + 5) + k + 50);
            if (noise::unit(id, 77) < 0.05) continue; // one in twenty is missing
            const double x = (k + row_shift * row) * vine.spacing;
            vine_at(w, {x, z, id}, vine, x - 0.45 * vine.spacing, x + 0.45 * vine.spacing, 3, 3, false, false);
        }
        w.begin(PartKind::row, Material::thin, {}, static_cast<std::uint32_t>(row + 10));
        w.age = 255;
        TubeStyle style = plain(3);
        style.thin = true;
        style.area_true = false;
        for (const auto& wire : vine.trellis.wires) {
            if (wire.kind == WireKind::drip) continue;
            std::vector<Vec3> points;
            for (double x = -18; x <= 18; x += 6) points.push_back({x, wire.height, z + wire.across});
            add_line(w, points, wire.radius, wire.radius, style, 1);
        }
        w.end();
        w.begin(PartKind::row, Material::timber, {}, static_cast<std::uint32_t>(row + 10));
        w.occlusion = 220;
        for (int k = -3; k <= 3; ++k) {
            const Vec3 post[] = {{k * 3 * vine.spacing + 0.9, -0.1, z},
                                 {k * 3 * vine.spacing + 0.9, vine.trellis.hedge_height + 0.02, z}};
            add_line(w, post, 0.04, 0.038, plain(6), 2);
        }
        w.end();
    }
    // A closed horizon: hedge and hills as three strips.
    w.begin(PartKind::horizon, Material::backdrop);
    for (int strip = 0; strip < 3; ++strip) {
        const double away = 58 - 8 * strip, high = 7.5 - 2.3 * strip;
        constexpr int steps = 96;
        std::uint32_t low = 0, top = 0;
        for (int k = 0; k <= steps; ++k) {
            const double turn = 6.2832 * k / steps;
            const auto layer = static_cast<std::uint32_t>(30 + strip);
            const double h =
                high * (0.75 + 0.35 * noise::smooth(std::fmod(static_cast<double>(k), steps) / (7.0 - 1.8 * strip), 0,
                                                    layer)) +
                (strip == 2 ? 0.6 * noise::smooth(k * 0.9, 1, 40) : 0);
            w.age = static_cast<std::uint8_t>(80 * strip);
            const Vec3 in{-std::cos(turn), 0, -std::sin(turn)};
            const auto a = w.vertex({-away * in.x, -0.5, -away * in.z}, in, 0, 0),
                       b = w.vertex({-away * in.x, h, -away * in.z}, in, 0, 1);
            if (k > 0) {
                w.triangle(low, b, top);
                w.triangle(low, a, b);
            }
            low = a;
            top = b;
        }
    }
    w.end();
}

} // namespace spurwright::mesh
