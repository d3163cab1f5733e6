#include "render/mesh/trellis_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/ground_mesh.h"
#include "render/mesh/noise.h"

namespace spurwright::mesh {
namespace {

using shape::TrellisShape;

constexpr double post_half_depth = 0.020, post_half_width = 0.021; // rolled steel, our choice
constexpr double sag = 0.004;                                      // a span

TubeStyle thin_style(int sides) {
    TubeStyle style;
    style.sides = sides;
    style.thin = true;
    style.area_true = false;
    return style;
}

// Height of a wire that hangs between its posts.
double hung(const TrellisShape& t, double x, double height) {
    double low = t.near_end, high = t.far_end;
    for (const auto& post : t.posts) {
        if (post.x <= x) low = std::max(low, post.x);
        if (post.x >= x) high = std::min(high, post.x);
    }
    if (high - low < 1e-6) return height;
    const double share = (x - low) / (high - low);
    return height - 4 * sag * share * (1 - share);
}

void add_wire(Writer& w, const TrellisShape& t, const shape::WireShape& wire) {
    const bool drip = wire.kind == WireKind::drip;
    w.begin(drip ? PartKind::drip : PartKind::wire, drip ? Material::rubber : Material::thin, {}, wire.wire.value);
    w.flags = 0;
    w.age = 255; // metal: the thin shader tells wires from dry stems by it
    std::vector<Vec3> points;
    for (double x = t.near_end; x < t.far_end; x += std::fabs(x) < 2 ? 0.45 : 0.9)
        points.push_back({x, hung(t, x, wire.height) - (drip ? 0.006 * std::sin(9 * x) : 0), wire.across});
    points.push_back({t.far_end, wire.height, wire.across});
    TubeStyle style = thin_style(drip ? 7 : 4);
    style.thin = !drip;
    add_line(w, points, wire.radius, wire.radius, style, 10);
    if (drip) {
        for (double x = std::ceil(t.near_end); x < t.far_end; x += 0.6)
            if (std::fabs(x) < 4)
                add_blob(w, {x, hung(t, x, wire.height) - 0.008, wire.across}, {1, 0, 0}, {0, 1, 0},
                         {0.011, 0.011, 0.013}, 4, 6, 0, 0);
    }
    w.end();
}

void add_box(Writer& w, Vec3 low, Vec3 high) {
    const Vec3 normals[] = {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}};
    for (const Vec3 n : normals) {
        const Vec3 a = std::fabs(n.y) > 0.5 ? Vec3{0, 0, 1} : Vec3{0, 1, 0}, b = shape::cross(n, a);
        const Vec3 middle = 0.5 * (low + high), half = 0.5 * (high - low);
        const auto corner = [&](double p, double q) {
            const Vec3 d = n + p * a + q * b;
            const Vec3 place{middle.x + d.x * half.x, middle.y + d.y * half.y, middle.z + d.z * half.z};
            return w.vertex(place, n, std::fabs(n.x) > 0.5 ? place.z * 6 : place.x * 6, place.y * 3);
        };
        const auto v0 = corner(-1, -1), v1 = corner(1, -1), v2 = corner(1, 1), v3 = corner(-1, 1);
        w.triangle(v0, v1, v2);
        w.triangle(v0, v2, v3);
    }
}

void add_round_post(Writer& w, double x, double z, double radius, double top, double lean, std::uint32_t id,
                    int sides) {
    std::vector<Ring> rings;
    const Vec3 foot{x, ground_height(x, z) - 0.08, z}, head{x + lean, top, z};
    const Vec3 along = shape::unit(head - foot);
    for (int i = 0; i <= 12; ++i) {
        const double share = i / 12.0;
        const double r = radius * (1.03 - 0.06 * share) * (i == 12 ? 0.96 : 1.0);
        Ring ring{shape::lerp(foot, head, share), along, shape::any_square_to(along), r, r, share * top / 0.5};
        ring.lobe = 0.025;
        ring.lobe_at = 0.1 * id;
        rings.push_back(ring);
    }
    TubeStyle style;
    style.sides = sides;
    style.u_tiles = 2;
    style.leave_finish_open = true;
    w.begin(PartKind::post, Material::timber, {}, id);
    add_tube(w, rings, style);
    w.end();
    w.begin(PartKind::post, Material::face, {}, id);
    w.flags = cut_face;
    w.age = 160;
    Face face;
    face.normal = along;
    face.sunk = 0.05;
    add_face(w, rings.back(), style, face);
    w.end();
}

void add_post(Writer& w, const TrellisShape& t, const shape::PostShape& post, std::uint32_t id, const Detail& detail) {
    if (post.end) {
        add_round_post(w, post.x, -0.058, 0.055, post.top, post.x < 0 ? -0.06 : 0.06, id, detail.trunk_sides);
        w.begin(PartKind::post, Material::thin, {}, id);
        w.age = 255;
        const Vec3 stay[] = {{post.x, post.top - 0.15, -0.058}, {post.x + (post.x < 0 ? -1.3 : 1.3), 0, -0.058}};
        add_line(w, stay, 0.0025, 0.0025, thin_style(5));
        w.end();
        return;
    }
    w.begin(PartKind::post, Material::metal, {}, id);
    const double foot = ground_height(post.x, 0) - 0.1;
    // A channel: web across the row, two flanges along it; the fruiting wire lies in a slot of the web.
    add_box(w, {post.x - 0.0015, foot, -post_half_depth}, {post.x + 0.0015, post.top, post_half_depth});
    add_box(w, {post.x - post_half_width, foot, -post_half_depth - 0.0015},
            {post.x + post_half_width, post.top, -post_half_depth + 0.0015});
    add_box(w, {post.x - post_half_width, foot, post_half_depth - 0.0015},
            {post.x + post_half_width, post.top, post_half_depth + 0.0015});
    for (const auto& wire : t.wires) { // lugs hold each wire
        const double z = wire.across, side = z < 0 ? -1 : 1;
        if (std::fabs(z) > post_half_depth) {
            const double a = side * post_half_depth, b = z + side * 0.004;
            add_box(w, {post.x - 0.006, wire.height - 0.005, std::min(a, b)},
                    {post.x + 0.006, wire.height - 0.002, std::max(a, b)});
            add_box(w, {post.x - 0.006, wire.height - 0.005, std::min(b, b - side * 0.003)},
                    {post.x + 0.006, wire.height + 0.010, std::max(b, b - side * 0.003)});
        } else {
            add_box(w, {post.x - 0.007, wire.height - 0.006, z - 0.005},
                    {post.x + 0.007, wire.height - 0.003, z + 0.005});
        }
    }
    w.end();
}

} // namespace

void add_trellis(Writer& w, const shape::VineShape& vine, const Detail& detail) {
    const TrellisShape& t = vine.trellis;
    for (const auto& wire : t.wires) add_wire(w, t, wire);
    std::uint32_t id = 1;
    for (const auto& post : t.posts) add_post(w, t, post, id++, detail);
    for (const Vec3 clip : t.clips) {
        w.begin(PartKind::clip, Material::metal, {}, id++);
        const double y = hung(t, clip.x, clip.y);
        const Vec3 points[] = {{clip.x, y - 0.006, -t.clip_half_gap - 0.005},
                               {clip.x, y + 0.005, -t.clip_half_gap},
                               {clip.x, y + 0.003, 0},
                               {clip.x, y + 0.005, t.clip_half_gap},
                               {clip.x, y - 0.006, t.clip_half_gap + 0.005}};
        TubeStyle style;
        style.sides = 6;
        add_line(w, points, 0.0014, 0.0014, style, 10);
        w.end();
    }
    add_round_post(w, t.stake_foot.x, t.stake_foot.z, 0.011, t.stake_top, 0.006, 900, 8);
    // A loop holds the trunk to its stake.
    const double y = 0.55 * t.stake_top;
    shape::TieShape hold;
    hold.cane = {0, y, 0};
    hold.along = {0, 1, 0};
    hold.wire = {t.stake_foot.x, y, t.stake_foot.z};
    for (const auto& stem : vine.stems) {
        if (!stem.trunk) continue;
        for (std::size_t s = 0; s < stem.line.segment_count(); ++s) {
            const auto at = stem.line.at(s, 0.5);
            if (std::fabs(at.place.y - y) < 0.06) hold.cane = at.place, hold.cane_radius = at.radii.mean() * 1.12;
        }
        break;
    }
    if (hold.cane_radius > 0) add_tie(w, hold, detail);
}

void add_tie(Writer& w, const shape::TieShape& tie, const Detail& detail) {
    // Kinds of tie by its own number: paper-covered wire, twine, rubber tube.
    const std::uint32_t kind = (tie.tie.value * 7 + 2) % 3;
    const Material material = kind == 2 ? Material::rubber : Material::twine;
    w.begin(PartKind::tie, material, {}, tie.tie.value);
    w.age = static_cast<std::uint8_t>(std::min(255, 16 * tie.winters));
    const double thick = kind == 2 ? 0.0016 : 0.0012;
    const Vec3 away = tie.wire - tie.cane;
    const Vec3 towards = shape::square_part(shape::length(away) > 1e-4 ? away : Vec3{0, -1, 0}, shape::unit(tie.along));
    const Vec3 side = shape::cross(tie.along, towards);
    const double gap = std::clamp(std::fabs(shape::dot(away, towards)), 0.0, 0.15);
    const double sunk = tie.state == TieState::sunk ? 0.85 : 1.06;
    const double around = tie.cane_radius * sunk + thick, at_wire = 0.0014 + thick;
    std::vector<Vec3> points;
    const auto put = [&](double t, double s, double along) {
        points.push_back(tie.cane + t * towards + s * side + along * tie.along);
    };
    // From the wire round the cane and back: an open loop, its two ends twisted and left free.
    put(gap + 0.013, 0.004, 0.008);
    put(gap + 0.007, 0.002, 0.004);
    put(gap + at_wire, -0.001, 0.002);
    for (int k = 0; k <= 10; ++k) {
        const double a = 0.55 + (6.2832 - 1.1) * k / 10;
        put(around * std::cos(a), around * std::sin(a), 0.002 - 0.0004 * k);
    }
    put(gap + at_wire, 0.001, -0.002);
    put(gap + 0.009, -0.003, -0.003);
    put(gap + 0.014, -0.006, -0.007);
    TubeStyle style;
    style.sides = std::max(5, detail.thin_sides);
    add_line(w, points, thick, thick, style, 40);
    w.end();
}

} // namespace spurwright::mesh
