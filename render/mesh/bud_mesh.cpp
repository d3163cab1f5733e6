#include "render/mesh/bud_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/noise.h"

namespace spurwright::mesh {

BudSize size_of(const shape::BudShape& bud) {
    const double r = bud.stem_radius;
    double width = std::max(0.0036, 1.12 * r) * noise::between(0.92, 1.1, bud.bud.value, 1);
    double size = std::max(0.0056, 1.65 * r) * noise::between(0.92, 1.12, bud.bud.value, 2);
    if (bud.kind == BudKind::crown) width = 0.0026, size = 0.0032;
    if (bud.harmed) width *= 0.55, size *= 0.5;
    return {size, width, 0.78 * width};
}

void add_bud(Writer& w, const shape::VineShape& vine, const shape::BudShape& bud, const Detail& detail) {
    const auto& stem = vine.stems[bud.stem];
    const BudSize size = size_of(bud);
    const double r = bud.stem_radius * 1.05;
    const Vec3 way = shape::unit(0.75 * bud.out + 0.65 * bud.along);
    const Vec3 flat = shape::square_part(bud.out, way); // thinner this way
    const Vec3 base = bud.foot + (0.70 * r) * bud.out;
    // Share of the length, share of the full width: a teardrop.
    constexpr double fine[][2] = {{0.0, 0.72}, {0.18, 0.96}, {0.36, 1.0}, {0.56, 0.84}, {0.76, 0.54}, {0.92, 0.22}};
    constexpr double coarse[][2] = {{0.0, 0.75}, {0.3, 1.0}, {0.62, 0.76}, {0.9, 0.25}};
    constexpr double few[][2] = {{0.0, 0.8}, {0.4, 1.0}, {0.85, 0.35}};
    constexpr double fewest[][2] = {{0.05, 1.0}, {0.65, 0.75}};
    std::vector<Ring> rings;
    const auto ring = [&](const double(&p)[2]) {
        Ring at{base + (p[0] * size.length) * way, way, flat, p[1] * size.thickness / 2, p[1] * size.width / 2, p[0]};
        at.slope = p[0] < 0.3 ? 0.4 : p[0] < 0.5 ? -0.1 : -0.5;
        at.age = w.age;
        rings.push_back(at);
    };
    w.begin(PartKind::bud, Material::bud, stem.axis, bud.bud.value);
    w.flags = bud.harmed ? dead : std::uint8_t{0};
    const bool small = bud.kind == BudKind::crown || stem.lateral;
    if (detail.bud_rings >= 5 && !small)
        for (const auto& p : fine) ring(p);
    else if (detail.bud_rings >= 5)
        for (const auto& p : coarse) ring(p);
    else if (detail.bud_rings >= 3 && !small)
        for (const auto& p : few) ring(p);
    else
        for (const auto& p : fewest) ring(p);
    TubeStyle style;
    style.sides = small ? std::min(5, detail.bud_sides) : detail.bud_sides;
    style.finish = Close::pole;
    add_tube(w, rings, style);
    w.end();
}

} // namespace spurwright::mesh
