#include "render/scene/picking.h"

#include <algorithm>
#include <cmath>

namespace spurwright::scene {
namespace {

glm::vec3 of(shape::Vec3 v) { return {v.x, v.y, v.z}; }

// Nearest places of a ray and a segment: distance along the ray, share along the segment, gap between them.
struct Nearest {
    float depth, share, gap;
};

Nearest nearest(const Ray& ray, glm::vec3 a, glm::vec3 b) {
    const glm::vec3 u = b - a, w = a - ray.from;
    const float uu = glm::dot(u, u), du = glm::dot(ray.way, u), dw = glm::dot(ray.way, w), uw = glm::dot(u, w);
    const float bottom = uu - du * du;
    float share = bottom > 1e-12f ? (du * dw - uw) / bottom : 0.0f;
    share = std::clamp(share, 0.0f, 1.0f);
    float depth = std::max(0.0f, dw + share * du);
    if (uu > 1e-12f) share = std::clamp((depth * du - uw) / uu, 0.0f, 1.0f);
    depth = std::max(0.0f, dw + share * du);
    return {depth, share, glm::length(a + share * u - ray.from - depth * ray.way)};
}

} // namespace

void Capsules::Spheres::add(glm::vec3 middle, float radius) {
    x.push_back(middle.x);
    y.push_back(middle.y);
    z.push_back(middle.z);
    reach.push_back(radius);
}

float Capsules::Spheres::outside(std::size_t i, const Ray& ray, float slope) const {
    const float dx = x[i] - ray.from.x, dy = y[i] - ray.from.y, dz = z[i] - ray.from.z;
    const float along = dx * ray.way.x + dy * ray.way.y + dz * ray.way.z;
    const float beside2 = dx * dx + dy * dy + dz * dz - along * along;
    const float room = reach[i] + slope * (std::fabs(along) + reach[i]);
    return std::max(beside2 - room * room, -along - reach[i]);
}

void Capsules::add(const Capsule& c) {
    const glm::vec3 middle = 0.5f * (c.from + c.to);
    const float radius = 0.5f * glm::length(c.to - c.from) + c.radius;
    const Box box{middle - radius, middle + radius};
    if (all_.size() % block == 0) {
        boxes_.push_back(box);
        blocks_.add(middle, radius);
    } else {
        Box& whole = boxes_.back();
        whole = {glm::min(whole.low, box.low), glm::max(whole.high, box.high)};
        const glm::vec3 at = 0.5f * (whole.low + whole.high);
        blocks_.x.back() = at.x;
        blocks_.y.back() = at.y;
        blocks_.z.back() = at.z;
        blocks_.reach.back() = 0.5f * glm::length(whole.high - whole.low) + 1e-5f; // a hair for rounding
    }
    all_.push_back(c);
    each_.add(middle, radius);
}

Capsules::Capsules(const shape::VineShape& vine) {
    using mesh::PartKind;
    for (const auto& stem : vine.stems) {
        const auto& points = stem.line.points();
        NodeId node = stem.nodes.front().node;
        for (std::size_t s = 0; s + 1 < points.size(); ++s) {
            if (points[s].node >= 0) node = stem.nodes[static_cast<std::size_t>(points[s].node)].node;
            const float radius = static_cast<float>(stem.line.at(s, 0.5).radii.mean());
            add({of(points[s].place), of(points[s + 1].place), radius, PartKind::stem, stem.axis, node,
                 stem.axis.value});
        }
    }
    for (const auto& bud : vine.buds) {
        const auto& stem = vine.stems[bud.stem];
        const double size = std::max(0.0032, 1.1 * bud.stem_radius);
        const shape::Vec3 middle = bud.foot + (bud.stem_radius + 0.3 * size) * bud.out + 0.3 * size * bud.along;
        add({of(middle), of(middle), static_cast<float>(0.6 * size), PartKind::bud, stem.axis, node_of(bud.bud),
             bud.bud.value});
    }
    for (const auto& wound : vine.wounds)
        add({of(wound.root), of(wound.face), static_cast<float>(wound.radii.mean()), PartKind::face,
             vine.stems[wound.stem].axis, wound.node, wound.wound.value});
    for (const auto& tie : vine.ties) {
        const double r = tie.cane_radius + 0.003;
        add({of(tie.cane - 0.004 * tie.along), of(tie.cane + 0.004 * tie.along), static_cast<float>(r), PartKind::tie,
             axis_of(tie.node), tie.node, tie.tie.value});
    }
    const auto& t = vine.trellis;
    for (const auto& wire : t.wires)
        add({{static_cast<float>(t.near_end), static_cast<float>(wire.height), static_cast<float>(wire.across)},
             {static_cast<float>(t.far_end), static_cast<float>(wire.height), static_cast<float>(wire.across)},
             static_cast<float>(wire.radius),
             wire.kind == WireKind::drip ? PartKind::drip : PartKind::wire,
             {},
             {},
             wire.wire.value});
    for (const auto& post : t.posts)
        add({{static_cast<float>(post.x), 0, 0},
             {static_cast<float>(post.x), static_cast<float>(post.top), 0},
             0.025f,
             PartKind::post,
             {},
             {},
             0});
    for (const auto& clip : t.clips)
        add({of(clip - shape::Vec3{0, 0, t.clip_half_gap}),
             of(clip + shape::Vec3{0, 0, t.clip_half_gap}),
             0.003f,
             PartKind::clip,
             {},
             {},
             0});
    add({of(t.stake_foot),
         of(shape::Vec3{t.stake_foot.x, t.stake_top, t.stake_foot.z}),
         0.013f,
         PartKind::stake,
         {},
         {},
         0});
}

void Capsules::near(const Ray& ray, float slope, std::vector<std::uint32_t>& found) const {
    found.clear();
    for (std::size_t b = 0; b < boxes_.size(); ++b) {
        if (blocks_.outside(b, ray, slope) > 0) continue;
        const std::size_t to = std::min((b + 1) * block, all_.size());
        for (std::size_t i = b * block; i < to; ++i)
            if (each_.outside(i, ray, slope) <= 0) found.push_back(static_cast<std::uint32_t>(i));
    }
}

std::vector<Picked> picked_all(const Capsules& capsules, const Ray& ray, const Reach& reach) {
    const float slope = reach.slope + reach.extra_pixels * reach.radians_a_pixel;
    std::vector<std::uint32_t> near;
    near.reserve(128);
    capsules.near(ray, slope, near);
    std::vector<Picked> list;
    list.reserve(32);
    for (const std::uint32_t i : near) {
        const Capsule& c = capsules.all()[i];
        const Nearest n = nearest(ray, c.from, c.to);
        const float outside = n.gap - c.radius;
        if (outside > slope * n.depth || n.depth <= 0) continue;
        Picked p;
        p.kind = c.kind;
        p.axis = c.axis;
        p.node = c.node;
        p.id = c.id;
        p.share = n.share;
        p.hit = outside <= 0;
        p.depth = p.hit ? n.depth - std::sqrt(std::max(0.0f, c.radius * c.radius - n.gap * n.gap)) : n.depth;
        p.miss = p.hit ? 0 : outside / n.depth;
        p.place = c.from + n.share * (c.to - c.from);
        const auto better = [](const Picked& a, const Picked& b) {
            return a.miss != b.miss ? a.miss < b.miss : a.depth < b.depth;
        };
        list.insert(std::upper_bound(list.begin(), list.end(), p, better), p); // a handful: quicker than sorting them
    }
    // A near miss well in front of the first hit comes first only where it stands close before it.
    if (!list.empty() && list.front().hit) {
        const float depth = list.front().depth;
        const auto before = std::find_if(list.begin(), list.end(), [&](const Picked& p) {
            return !p.hit && depth - p.depth > 0.020f && depth - p.depth <= 0.1f;
        });
        if (before != list.end()) std::rotate(list.begin(), before, before + 1);
    }
    return list;
}

std::optional<Picked> picked(const Capsules& capsules, const Ray& ray, const Reach& reach) {
    const auto list = picked_all(capsules, ray, reach);
    if (list.empty()) return std::nullopt;
    return list.front();
}

} // namespace spurwright::scene
