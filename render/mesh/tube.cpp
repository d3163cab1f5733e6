#include "render/mesh/tube.h"

#include <cmath>
#include <vector>

#include "render/mesh/noise.h"

namespace spurwright::mesh {
namespace {

constexpr double pi = 3.14159265358979323846;

struct Wave {
    double cosine, sine;
};
Wave wave(double angle) { return {std::cos(angle), std::sin(angle)}; }
// Of the sum of two angles.
double cosine_of(Wave a, Wave b) { return a.cosine * b.cosine - a.sine * b.sine; }
double sine_of(Wave a, Wave b) { return a.sine * b.cosine + a.cosine * b.sine; }

// One step round a tube, and its multiples that old wood's lobes are made of.
struct Turn {
    double cosine, sine;
    Wave two, three, five;
};

// One turn in `sides` steps; the last entry is the first, so that seams meet exactly.
const std::vector<Turn>& turns(int sides) {
    static thread_local std::vector<std::vector<Turn>> kept(64);
    auto& list = kept[static_cast<std::size_t>(sides)];
    if (list.empty()) {
        for (int i = 0; i < sides; ++i) {
            const double a = 2 * pi * i / sides;
            list.push_back({std::cos(a), std::sin(a), wave(2 * a), wave(3 * a), wave(5 * a)});
        }
        list.push_back(list.front());
    }
    return list;
}

// Lobes of old wood: three waves round it that wander along it, each at its own pace. Our choice, from the look.
struct Lobes {
    Wave by_two, by_three, by_five; // how far each has wandered
    explicit Lobes(double along) : by_two(wave(23 * along)), by_three(wave(7 * along)), by_five(wave(-13 * along)) {}
    double height(const Turn& t) const {
        return 0.6 * sine_of(t.three, by_three) + 0.4 * sine_of(t.five, by_five) + 0.5 * sine_of(t.two, by_two);
    }
    double slope(const Turn& t) const {
        return 1.8 * cosine_of(t.three, by_three) + 2.0 * cosine_of(t.five, by_five) + 1.0 * cosine_of(t.two, by_two);
    }
};

// Length that a normal loses by leaning with the slope of its ring.
double lean_of(const Ring& ring) { return 1 / std::sqrt(1 + ring.slope * ring.slope); }

struct Spot {
    Vec3 place, normal;
};

// What all places of a ring share.
struct RingPen {
    const Ring& ring;
    double grow;
    Vec3 side = shape::cross(ring.along, ring.out);
    double lean = lean_of(ring), facing = shape::dot(ring.cut, ring.along);
    Lobes lobes{ring.lobe > 0 ? ring.lobe_at : 0};
    Spot spot(const Turn& t) const;
};

Spot RingPen::spot(const Turn& t) const {
    double f = grow, df = 0;
    if (ring.lobe > 0) {
        f *= 1 + ring.lobe * lobes.height(t);
        df = grow * ring.lobe * lobes.slope(t);
    }
    const double x = ring.across_out * f * t.cosine, y = ring.across_side * f * t.sine;
    const double dx = ring.across_out * (df * t.cosine - f * t.sine),
                 dy = ring.across_side * (df * t.sine + f * t.cosine);
    const Vec3 radial = dy * ring.out - dx * side;
    Vec3 place = ring.centre + x * ring.out + y * side;
    if (facing > 0.2) // slid along the wood onto the cut
        place = place - (shape::dot(place - ring.centre, ring.cut) / facing) * ring.along;
    // `radial` is square to the wood, so the length of both together is known from that of each.
    const double wide = shape::length(radial);
    Vec3 normal = wide > 1e-12 ? lean * ((1 / wide) * radial - ring.slope * ring.along) : ring.out;
    if (ring.blend > 0) {
        const Vec3 from = place - ring.bearer;
        const Vec3 bearers = shape::unit(from - shape::dot(from, ring.bearer_along) * ring.bearer_along, normal);
        normal = shape::unit(shape::lerp(normal, bearers, ring.blend), normal);
    }
    return {place, normal};
}

} // namespace

double area_true_radius(int sides) {
    const double step = 2 * pi / sides;
    return std::sqrt(step / std::sin(step));
}

void add_tube(Writer& w, std::span<const Ring> rings, const TubeStyle& style) {
    const auto& turn = turns(style.sides);
    const double grow = style.area_true ? area_true_radius(style.sides) : 1.0;
    const auto sides = static_cast<std::uint32_t>(style.sides);
    const auto first = static_cast<std::uint32_t>(w.mesh().vertices.size());
    const std::uint8_t flags = w.flags;
    for (const Ring& ring : rings) {
        w.flags = static_cast<std::uint8_t>(flags | ring.flags);
        const RingPen pen{ring, grow};
        w.along = ring.along;
        w.node = ring.node;
        w.age = ring.age;
        Spot seam;  // where the tube closes one place has two vertices
        for (std::uint32_t j = 0; j <= sides; ++j) {
            const double share = static_cast<double>(j) / style.sides;
            const Spot s = j == sides ? seam : pen.spot(turn[j]);
            if (j == 0) seam = s;
            w.vertex(s.place, s.normal, style.thin ? ring.across_out * grow : style.u_from + style.u_tiles * share,
                     ring.v);
        }
    }
    w.flags = flags;
    const auto ring_count = static_cast<std::uint32_t>(rings.size());
    for (std::uint32_t i = 0; i + 1 < ring_count; ++i)
        for (std::uint32_t j = 0; j < sides; ++j) {
            const std::uint32_t a = first + i * (sides + 1) + j, b = a + sides + 1;
            w.triangle(a, a + 1, b + 1);
            w.triangle(a, b + 1, b);
        }
    const auto close = [&](const Ring& ring, std::uint32_t at, bool outer, Close how) {
        const double way = outer ? 1 : -1;
        const double reach = how == Close::pole ? 0.35 * std::min(ring.across_out, ring.across_side) : 0;
        w.along = ring.along;
        w.node = ring.node;
        w.age = ring.age;
        const double u = style.thin ? ring.across_out : style.u_from + 0.5 * style.u_tiles;
        const std::uint32_t middle = w.vertex(ring.centre + way * reach * ring.along, way * ring.along, u, ring.v);
        for (std::uint32_t j = 0; j < sides; ++j)
            if (outer)
                w.triangle(middle, at + j, at + j + 1);
            else
                w.triangle(middle, at + j + 1, at + j);
    };
    close(rings.front(), first, false, style.start);
    if (!style.leave_finish_open) close(rings.back(), first + (ring_count - 1) * (sides + 1), true, style.finish);
}

std::vector<Vec3> ring_places(const Ring& ring, const TubeStyle& style) {
    const double grow = style.area_true ? area_true_radius(style.sides) : 1.0;
    const RingPen pen{ring, grow};
    const auto& turn = turns(style.sides);
    std::vector<Vec3> places;
    for (std::size_t j = 0; j + 1 < turn.size(); ++j) places.push_back(pen.spot(turn[j]).place);
    return places;
}

void add_face(Writer& w, const Ring& last, const TubeStyle& style, const Face& face) {
    const auto rim = ring_places(last, style);
    const double radius = (last.across_out + last.across_side) / 2;
    const Vec3 side = shape::cross(last.along, last.out);
    const auto sides = static_cast<std::uint32_t>(style.sides);
    w.along = last.along;
    w.node = 0;
    const auto put = [&](double share, double height, bool exact) {
        const auto first = static_cast<std::uint32_t>(w.mesh().vertices.size());
        for (std::uint32_t j = 0; j < sides; ++j) {
            const Turn t = turns(style.sides)[j];
            const double jag = face.jagged * (noise::unit(face.seed, j) - 0.3);
            const Vec3 place =
                exact ? rim[j] : shape::lerp(last.centre, rim[j], share) + (height + jag) * radius * face.normal;
            w.vertex(place,
                     shape::unit(face.normal +
                                 (height > 0 ? 0.5 : -face.sunk) * share * (t.cosine * last.out + t.sine * side)),
                     0.5 + 0.5 * share * t.cosine, 0.5 + 0.5 * share * t.sine);
        }
        return first;
    };
    const std::uint32_t outer = put(1, 0, true),
                        inner = put(face.rim > 0 ? 0.84 : 0.7, face.rim > 0 ? face.rim : -0.5 * face.sunk, false);
    const std::uint32_t middle = w.vertex(last.centre - face.sunk * radius * face.normal, face.normal, 0.5, 0.5);
    for (std::uint32_t j = 0; j < sides; ++j) {
        const std::uint32_t k = (j + 1) % sides;
        w.triangle(outer + j, outer + k, inner + k);
        w.triangle(outer + j, inner + k, inner + j);
        w.triangle(middle, inner + j, inner + k);
    }
}

void add_line(Writer& w, std::span<const Vec3> points, double radius_from, double radius_to, const TubeStyle& style,
              double v_scale) {
    std::vector<Vec3> places(points.begin(), points.end()), ways;
    for (std::size_t i = 0; i < places.size(); ++i)
        ways.push_back(shape::unit(places[std::min(i + 1, places.size() - 1)] - places[i == 0 ? 0 : i - 1]));
    const auto frames = shape::frames_along(places, ways, shape::any_square_to(ways[0]));
    std::vector<Ring> rings;
    double gone = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (i > 0) gone += shape::length(places[i] - places[i - 1]);
        const double share = static_cast<double>(i) / static_cast<double>(places.size() - 1);
        const double r = radius_from + share * (radius_to - radius_from);
        rings.push_back({places[i],
                         frames[i].along,
                         frames[i].out,
                         r,
                         r,
                         gone * v_scale,
                         0,
                         {},
                         0,
                         {},
                         {},
                         0,
                         0,
                         w.node,
                         w.age,
                         0});
    }
    add_tube(w, rings, style);
}

void add_blob(Writer& w, Vec3 centre, Vec3 along, Vec3 out, Vec3 radii, int rings, int sides, double lobe,
              double seed) {
    std::vector<Ring> list;
    for (int i = 0; i < rings; ++i) {
        const double a = pi * (0.5 + i) / rings;
        const double across = std::sin(a), height = -std::cos(a);
        const double slope = height / std::max(across, 0.1) * -(radii.x + radii.y) / 2 / radii.z;
        list.push_back({centre + (height * radii.z) * along,
                        along,
                        out,
                        across * radii.x,
                        across * radii.y,
                        height * radii.z / 0.08,
                        slope,
                        {},
                        0,
                        {},
                        {},
                        lobe,
                        seed + 0.11 * height,
                        0,
                        w.age,
                        0});
    }
    TubeStyle style;
    style.sides = sides;
    style.area_true = false;
    style.u_tiles = 2;
    style.start = style.finish = Close::pole;
    add_tube(w, list, style);
}

} // namespace spurwright::mesh
