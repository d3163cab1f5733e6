#include "render/mesh/head_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/noise.h"
#include "render/mesh/stem_mesh.h"

namespace spurwright::mesh {
namespace {

constexpr double wound_lip = 1.16; // a callus is wider than its face

void knob(Writer& w, Vec3 place, Vec3 way, double radius, std::uint32_t id, const Detail& detail) {
    const double size = radius * noise::between(0.9, 1.15, id, 1);
    add_blob(w, place, way, shape::any_square_to(way),
             {size, size * noise::between(0.85, 1.1, id, 2), size * noise::between(0.75, 1.0, id, 3)},
             detail.bud_rings + 1, detail.thick_sides + 2, 0.10, noise::unit(id, 4));
}

} // namespace

void add_knobs(Writer& w, const shape::VineShape& vine, const Detail& detail) {
    w.begin(PartKind::head, Material::old);
    w.age = age_byte(12);
    // Where younger wood leaves old wood.
    for (const auto& stem : vine.stems) {
        if (stem.trunk) continue;
        const auto& parent = vine.stems[static_cast<std::size_t>(stem.parent_stem)];
        if (parent.wood != shape::Wood::old) continue;
        const auto& on = parent.nodes[index_of(stem.parent)];
        const Vec3 way = shape::unit(stem.nodes.front().place - on.place);
        const double r = stem.nodes.front().radius;
        const double reach = std::max(0.0, on.radius - 0.15 * r);
        knob(w, on.place + reach * way, way, std::min(1.45 * r, 0.95 * on.radius + 0.2 * r), stem.axis.value, detail);
    }
    // The calluses of old cuts.
    for (const auto& wound : vine.wounds) {
        if (wound.winters == 0 || vine.stems[wound.stem].wood != shape::Wood::old) continue;
        const double r = wound.radii.mean();
        knob(w, wound.face - (0.72 * r + 0.001) * wound.outward, wound.outward, wound_lip * r,
             50'000 + wound.wound.value, detail);
    }
    // Two crowns, a low fork, and some lumps below them.
    for (const auto& crown : vine.swellings) {
        const auto id = static_cast<std::uint32_t>(&crown - vine.swellings.data());
        const double r = crown.radius;
        add_blob(w, crown.middle,
                 shape::unit(Vec3{crown.middle.x - vine.stems[crown.stem].nodes.back().place.x, 0.4 * r, 0}), {0, 0, 1},
                 {r, 0.96 * r, 1.08 * r}, 10, detail.trunk_sides, 0.15, noise::unit(id, 4));
        for (std::uint32_t k = 0; k < 4; ++k) {
            const double turn = 6.2832 * (k + 0.7 * noise::unit(id, 30 + k)) / 4;
            const Vec3 out = shape::unit(Vec3{std::cos(turn), noise::between(-0.9, 0.1, id, 40 + k), std::sin(turn)});
            knob(w, crown.middle + (0.78 * r) * out, out, r * noise::between(0.3, 0.48, id, 50 + k), id * 16 + k,
                 detail);
        }
    }
    w.end();
}

void add_wound(Writer& w, const shape::VineShape& vine, const shape::WoundShape& wound, const Detail& detail) {
    const auto& bearer = vine.stems[wound.stem];
    TubeStyle style;
    style.sides = std::max(8, detail.sides(wound.radii.mean()));
    style.leave_finish_open = true;
    const Vec3 out = shape::any_square_to(wound.outward);
    const bool old_face = wound.winters > 0;
    const double r1 = wound.radii.major * wound.drawn_share, r2 = wound.radii.minor * wound.drawn_share;
    std::vector<Ring> rings;
    const double depth = shape::length(wound.face - wound.root);
    for (const double t : {0.0, 0.55, 0.85, 1.0}) {
        const double wide = t >= 1 ? 1.0 : old_face ? 1.12 : 1.05;
        Ring ring{wound.root + (t * depth) * wound.outward, wound.outward, out, r2 * wide, r1 * wide, t};
        if (t == 0)
            ring.across_out = std::min(ring.across_out, 0.7 * bearer.nodes[0].radius),
            ring.across_side = std::min(ring.across_side, 0.7 * bearer.nodes[0].radius);
        ring.lobe = old_face ? 0.05 : 0;
        ring.lobe_at = noise::unit(wound.wound.value, 2);
        ring.age = age_byte(wound.wood_age + wound.winters);
        rings.push_back(ring);
    }
    w.begin(PartKind::face, wound.wood_age <= 1 && !old_face ? Material::cane : Material::old, wound.axis,
            wound.wound.value);
    w.flags = bearer.dead ? dead : std::uint8_t{0};
    add_tube(w, rings, style);
    w.end();
    w.begin(PartKind::face, Material::face, wound.axis, wound.wound.value);
    w.flags = static_cast<std::uint8_t>(cut_face | (old_face ? 0 : fresh) | (bearer.dead ? dead : 0));
    w.age = static_cast<std::uint8_t>(std::min(255, 16 * wound.winters));
    Face face;
    face.normal = wound.outward;
    face.seed = wound.wound.value;
    if (old_face) face.sunk = 0.28, face.rim = wound.winters > 1 ? 0.08 : 0.0;
    add_face(w, rings.back(), style, face);
    w.end();
}

namespace {

// Whether a place of a trunk, by height and turn, is where the bark died back.
bool lies_bare(const shape::VineShape& vine, const shape::Stem& stem, double from_root, double turn) {
    for (const auto& strip : vine.dead_strips) {
        if (&vine.stems[strip.stem] != &stem || from_root < strip.from || from_root > strip.to) continue;
        const Vec3 along = stem.nodes.front().along, x = shape::any_square_to(along), y = shape::cross(along, x);
        if (shape::dot(std::cos(turn) * x + std::sin(turn) * y, strip.out) > 0.75) return true;
    }
    return false;
}

} // namespace

void add_strips(Writer& w, const shape::VineShape& vine, const Detail& detail) {
    for (const auto& stem : vine.stems) {
        if (!stem.trunk) continue;
        w.begin(PartKind::strips, Material::old, stem.axis);
        const double whole = stem.from_root(stem.line.segment_count());
        for (int k = 0; k < detail.strips; ++k) {
            const auto nth = static_cast<std::uint32_t>(k);
            const std::uint32_t id = stem.axis.value * 1000 + nth;
            const double size = noise::between(0.04, 0.16, id, 1), wide = noise::between(0.003, 0.009, id, 2);
            const double from = noise::between(0.05, whole - 0.03, id, 3), turn = 6.2832 * noise::unit(id, 4);
            const double lift = noise::between(0.001, 0.006, id, 5), curl = noise::between(0.0, 1.0, id, 6) * 0.010;
            const bool upward = noise::unit(id, 7) < 0.35;
            if (lies_bare(vine, stem, from, turn)) continue; // no bark, no strips of it
            constexpr int pieces = 4;
            std::uint32_t left = 0, right = 0;
            w.flags = ribbon;
            w.age = age_byte(10);
            for (int p = 0; p <= pieces; ++p) {
                const double share = static_cast<double>(p) / pieces;
                double s = from + (upward ? 1 : -1) * share * size;
                s = std::clamp(s, 0.035, whole - 0.02);
                std::size_t segment = 0;
                double gone = 0;
                while (segment + 1 < stem.line.segment_count() && gone + stem.line.segment_length(segment) < s)
                    gone += stem.line.segment_length(segment++);
                const auto at =
                    stem.line.at(segment, std::clamp((s - gone) / stem.line.segment_length(segment), 0.0, 1.0));
                const Vec3 x = shape::any_square_to(at.along), y = shape::cross(at.along, x);
                const double twist = turn + 0.25 * share * noise::between(-1, 1, id, 8);
                const Vec3 out = std::cos(twist) * x + std::sin(twist) * y, side = shape::cross(at.along, out);
                const double high = at.radii.mean() * 1.05 + lift * share + curl * share * share * share;
                const double half = wide / 2 * (1 - 0.45 * share);
                w.along = at.along;
                const Vec3 middle = at.place + high * out;
                const Vec3 normal = shape::unit(out + (upward ? -0.4 : 0.4) * share * at.along);
                const double v = s / 0.30 + noise::unit(id, 9);
                const std::uint32_t a =
                    w.vertex(middle - half * side, shape::unit(normal - 0.35 * side), noise::unit(id, 10), v);
                const std::uint32_t b =
                    w.vertex(middle + half * side, shape::unit(normal + 0.35 * side), noise::unit(id, 10) + 0.12, v);
                if (p > 0) {
                    // Seen from both sides; which way is outward depends on the way the strip runs.
                    if (upward) {
                        w.triangle(left, right, b);
                        w.triangle(left, b, a);
                    } else {
                        w.triangle(right, left, a);
                        w.triangle(right, a, b);
                    }
                }
                left = a;
                right = b;
            }
        }
        w.end();
    }
}

} // namespace spurwright::mesh
