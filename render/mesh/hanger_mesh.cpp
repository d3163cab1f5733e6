#include "render/mesh/hanger_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/noise.h"
#include "sim/shape/centre_line.h"

namespace spurwright::mesh {
namespace {

using shape::HangerShape;

TubeStyle thin_style(const Detail& detail) {
    TubeStyle style;
    style.sides = detail.thin_sides;
    style.thin = true;
    style.area_true = false;
    style.finish = Close::pole;
    return style;
}

// The same course with rounded corners.
std::vector<Vec3> rounded(const std::vector<Vec3>& corners, int pieces) {
    std::vector<shape::LinePoint> points;
    for (const Vec3& place : corners) points.push_back({place, {}, -1});
    const shape::CentreLine line(points, std::vector<shape::Radii>(points.size() - 1));
    std::vector<Vec3> course;
    for (std::size_t s = 0; s < line.segment_count(); ++s)
        for (int k = 0; k < pieces; ++k) course.push_back(line.at(s, static_cast<double>(k) / pieces).place);
    course.push_back(corners.back());
    return course;
}

// A wire or a cane within reach that a gripping tendril winds round: middle and direction.
bool support(const shape::VineShape& vine, const HangerShape& h, Vec3& place, Vec3& along) {
    double least = 0.07 * 0.07;
    bool found = false;
    const Vec3 from = h.foot + 0.03 * h.out;
    for (const auto& wire : vine.trellis.wires) {
        if (wire.kind == WireKind::drip || wire.dropped) continue;
        const Vec3 at{from.x, wire.height, wire.across};
        const double away = shape::dot(at - from, at - from);
        if (away < least) least = away, place = at, along = {1, 0, 0}, found = true;
    }
    for (std::size_t s = 0; s < vine.stems.size(); ++s) {
        if (s == h.stem || vine.stems[s].trunk) continue;
        for (const auto& node : vine.stems[s].nodes) {
            if (const double beside = node.place.x - from.x; beside * beside >= least) continue;
            const double away = shape::dot(node.place - from, node.place - from);
            if (away < least) least = away, place = node.place, along = node.along, found = true;
        }
    }
    return found;
}

void add_gripping(Writer& w, const shape::VineShape& vine, const HangerShape& h, const Detail& detail) {
    Vec3 middle, axis;
    std::vector<Vec3> points;
    const Vec3 start = h.foot + (0.8 * h.stem_radius) * h.out;
    points.push_back(start);
    int steps = detail.tendril_steps;
    const std::uint32_t id = h.node.value;
    if (support(vine, h, middle, axis)) {
        const double coil = axis.x == 1 ? 0.0028 : 0.0055;
        const double loops = noise::between(1.5, 3.5, id, 2);
        if (steps > 12) steps = static_cast<int>(9 * loops);
        const Vec3 a = shape::square_part(start - middle, axis), b = shape::cross(axis, a);
        const Vec3 knee = start + 0.45 * (middle - start) + noise::between(-0.004, 0.014, id, 11) * h.along;
        points.push_back(start + 0.35 * shape::length(knee - start) * h.out);
        points.push_back(knee);
        points.push_back(middle + (3 * coil) * a);
        points = rounded(points, detail.tendril_steps > 8 ? 3 : 2);
        points.pop_back();
        for (int k = 0; k <= steps; ++k) {
            const double share = static_cast<double>(k) / steps, turn = 6.2832 * loops * share;
            const double wide = coil * (1 + 2.0 * std::exp(-6 * share));
            points.push_back(middle + (wide * std::cos(turn)) * a + (wide * std::sin(turn)) * b +
                             (0.012 * share * (id % 2 ? 1 : -1)) * axis);
        }
        add_line(w, points, 0.0010, 0.0006, thin_style(detail), 20);
        return;
    }
    // Nothing in reach: a loose curl that winds up towards its end.
    const double turns = noise::between(1.0, 2.6, id, 3), size = noise::between(0.05, 0.11, id, 4);
    const Vec3 droop = shape::unit(h.out + Vec3{0, -0.5 - 0.6 * noise::unit(id, 5), 0});
    const Vec3 side = shape::cross(h.along, h.out);
    Vec3 way = h.out, at = start;
    for (int k = 1; k <= steps; ++k) {
        const double share = static_cast<double>(k) / steps;
        const double bend = share < 0.3 ? 0 : turns * 6.28 * (share - 0.3) * (share - 0.3) * 2;
        const Vec3 straight = shape::unit(shape::lerp(h.out, droop, std::min(1.0, 2 * share)));
        way = shape::unit(std::cos(bend) * straight + std::sin(bend) * shape::unit(0.8 * side + 0.4 * h.along));
        at = at + (size / steps) * way;
        points.push_back(at);
    }
    add_line(w, points, 0.0010, 0.0006, thin_style(detail), 20);
}

void add_stub(Writer& w, const HangerShape& h, double size, double radius, const Detail& detail) {
    const Vec3 start = h.foot + (0.7 * h.stem_radius) * h.out;
    const Vec3 way = shape::unit(h.out + 0.25 * h.along);
    const Vec3 bent =
        start + size * shape::unit(way + Vec3{0, noise::between(-0.6, 0.2, h.node.value, 12), 0} +
                                   noise::between(-0.4, 0.4, h.node.value, 13) * shape::cross(h.along, h.out));
    add_line(w, rounded({start, start + 0.5 * size * way, bent}, 3), radius, 0.7 * radius, thin_style(detail), 20);
}

// The dry stem of a whole bunch: it hangs, a few short arms, and on a mummy some shrivelled berries.
void add_rachis(Writer& w, const HangerShape& h, const Detail& detail) {
    const std::uint32_t id = h.node.value;
    const double size = noise::between(0.06, 0.13, id, 6);
    Vec3 at = h.foot + (0.7 * h.stem_radius) * h.out;
    std::vector<Vec3> points{at};
    Vec3 way = h.out;
    for (int k = 1; k <= 6; ++k) {
        way = shape::unit(way + Vec3{0, -0.42, 0});
        at = at + (size / 6) * way;
        points.push_back(at);
    }
    add_line(w, points, 0.0015, 0.0007, thin_style(detail), 20);
    for (std::uint32_t k = 2; k <= 5; ++k)
        for (std::uint32_t s = 0; s < 2; ++s) {
            const double turn = 6.28 * noise::unit(id, 20 + 2 * k + s);
            const Vec3 out = shape::unit(Vec3{std::cos(turn), 0.15, std::sin(turn)});
            const double arm = noise::between(0.006, 0.018, id, 40 + 2 * k + s) * (6.5 - k) / 4;
            const Vec3 arm_points[] = {points[k] + 0.0002 * out, points[k] + arm * out};
            add_line(w, arm_points, 0.0008, 0.0005, thin_style(detail), 20);
        }
}

} // namespace

void add_hanger(Writer& w, const shape::VineShape& vine, const HangerShape& h, const Detail& detail) {
    const AxisId axis = vine.stems[h.stem].axis;
    const std::uint32_t id = h.node.value;
    if (h.bunch != Bunch::none) {
        w.begin(PartKind::bunch, Material::thin, axis, id);
        if (h.bunch == Bunch::stub)
            add_stub(w, h, noise::between(0.010, 0.028, id, 7), 0.0015, detail);
        else
            add_rachis(w, h, detail);
        w.end();
        if (h.bunch == Bunch::mummy) {
            w.begin(PartKind::bunch, Material::dry, axis, id);
            for (std::uint32_t k = 0; k < 9; ++k) {
                const Vec3 off{noise::between(-0.014, 0.014, id, 60 + k), noise::between(-0.075, -0.02, id, 80 + k),
                               noise::between(-0.014, 0.014, id, 100 + k)};
                const double size = noise::between(0.003, 0.0055, id, 120 + k);
                add_blob(w, h.foot + 0.035 * h.out + off, {0, 1, 0}, {1, 0, 0}, {size, size, 1.2 * size}, 4, 5, 0.12,
                         k);
            }
            w.end();
        }
    }
    if (h.tendril == Tendril::gripping || h.tendril == Tendril::loose) {
        w.begin(PartKind::tendril, Material::thin, axis, id);
        if (h.tendril == Tendril::gripping || noise::unit(id, 8) < 0.35)
            add_gripping(w, vine, h, detail);
        else
            add_stub(w, h, noise::between(0.006, 0.020, id, 9), 0.0009, detail);
        w.end();
    }
}

} // namespace spurwright::mesh
