// What a pruner must read of the head and near it, asked of the pixels of grown vines: where a cane starts, old wounds, buds
// that can be counted. Drift-proof properties, never a golden. The bars are our choice.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "render/scene/draw_list.h"
#include "tests/render/drawing.h"
#include "tests/render/vines.h"

using namespace spurwright;
using test::drawn, test::Drawing;

namespace {

// The head as somebody sees it who leans in and walks about it: a step to either hand, in either alley.
std::array<scene::Camera, 4> head_views(const Drawing& d) {
    std::array<scene::Camera, 4> views;
    for (std::size_t i = 0; i < views.size(); ++i) {
        scene::Orbit about;
        about.pivot = {static_cast<float>(d.shape.head.x), static_cast<float>(d.shape.head.y) + 0.05f, static_cast<float>(d.shape.head.z)};
        about.distance = 0.65f;
        about.fov_deg = d.camera.fov_deg;
        about.yaw_deg = 45.0f + 90.0f * static_cast<float>(i);
        about.pitch_deg = 30;
        views[i] = scene::camera_of(about);
    }
    return views;
}

// Where the wood of a stem comes out of what bears it: the first place of its line a bearer's radius from where it began
// and outside of the head's swellings with their knobs (a quarter of their radius).
shape::Vec3 comes_out(const shape::VineShape& shape, const shape::Stem& stem) {
    const auto& bearer = shape.stems[static_cast<std::size_t>(stem.parent_stem)];
    const auto node = std::find_if(bearer.nodes.begin(), bearer.nodes.end(), [&](const auto& n) { return n.node == stem.parent; });
    const double radius = node == bearer.nodes.end() ? bearer.nodes.front().radius : node->radius;
    const shape::Vec3 from = stem.line.points().front().place;
    for (std::size_t s = 0; s + 1 < stem.line.points().size(); ++s)
        for (double share = 0; share < 1; share += 0.1)
            if (const auto at = stem.line.at(s, share).place; shape::length(at - from) >= radius &&
                std::none_of(shape.swellings.begin(), shape.swellings.end(), [&](const auto& c) { return shape::length(at - c.middle) < 1.26 * c.radius; }))
                return at;
    return stem.line.points().back().place;
}

// One patch: every pixel reached from the first by its eight neighbours.
bool one_patch(std::set<std::pair<int, int>> pixels) {
    if (pixels.empty()) return false;
    std::vector<std::pair<int, int>> edge{*pixels.begin()};
    pixels.erase(pixels.begin());
    while (!edge.empty()) {
        const auto [x, y] = edge.back();
        edge.pop_back();
        for (int dx = -1; dx <= 1; ++dx)
            for (int dy = -1; dy <= 1; ++dy)
                if (const auto at = pixels.find({x + dx, y + dy}); at != pixels.end()) {
                    edge.push_back(*at);
                    pixels.erase(at);
                }
    }
    return pixels.empty();
}

// Where its own pixels meet those of wood that bears it, or of a twin from the same node, within a cane's width of this place.
bool joint_seen(const Drawing& d, const shape::Stem& stem, const shape::Vec3& at) {
    const glm::vec2 middle = d.place(at);
    const float reach = 3 + 2 * static_cast<float>(stem.nodes.front().radius) * scene::pixels_a_metre(d.camera, static_cast<float>(d.distance(at)), d.height);
    if (!d.inside(middle, reach + 2)) return false;
    const AxisId bearer = axis_of(stem.parent);
    const auto is_own = [&](std::uint32_t part) { return part && d.vine.parts[part - 1].kind == mesh::PartKind::stem && d.vine.parts[part - 1].axis == stem.axis; };
    const auto bears = [&](std::uint32_t part) {
        if (!part) return false;
        const mesh::Part& p = d.vine.parts[part - 1];
        return p.kind == mesh::PartKind::head || p.kind == mesh::PartKind::strips || (p.kind == mesh::PartKind::stem && (p.axis == bearer || (p.axis != stem.axis && d.shape.find(p.axis)->parent == stem.parent)));
    };
    for (int y = static_cast<int>(middle.y - reach); y <= static_cast<int>(middle.y + reach); ++y)
        for (int x = static_cast<int>(middle.x - reach); x <= static_cast<int>(middle.x + reach); ++x)
            if (is_own(d.part(d.pixel(x, y))) && (bears(d.part(d.pixel(x - 1, y))) || bears(d.part(d.pixel(x + 1, y))) || bears(d.part(d.pixel(x, y - 1))) || bears(d.part(d.pixel(x, y + 1)))))
                return true;
    return false;
}

} // namespace

TEST_CASE("where a cane starts can be seen: the joints of 80 % of the canes near the head, from one of four sides") {
    NEED_A_PICTURE
    for (const Vine& vine : test::vines_to_read()) {
        Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::sun, 1280, 720, false);
        std::set<std::uint32_t> canes, seen;
        for (const scene::Camera& camera : head_views(d)) {
            test::look_from(*b, d, camera);
            for (const shape::Stem& stem : d.shape.stems) {
                if (stem.trunk || stem.lateral || stem.wood != shape::Wood::one_year || stem.parent_stem < 0) continue;
                const shape::Vec3 at = comes_out(d.shape, stem);
                if (shape::length(at - d.shape.head) > 0.25) continue;  // what the head's views hold
                canes.insert(stem.axis.value);
                if (joint_seen(d, stem, at)) seen.insert(stem.axis.value);
            }
        }
        MESSAGE(seen.size() << " of " << canes.size());
        CHECK(canes.size() >= 2);
        CHECK(seen.size() * 10 >= canes.size() * 8);
    }
}

TEST_CASE("an old wound that is open for 10 mm or more and looks this way is 8 px or wider near the head") {
    NEED_A_PICTURE
    int wide = 0;
    for (const Vine& vine : test::vines_to_read()) {
        const Drawing d = drawn(*b, vine, scene::View::head, scene::Sky::sun, 1280, 720, false);
        for (const mesh::Part& part : d.vine.parts) {
            if (part.kind != mesh::PartKind::face) continue;
            const auto wound = std::find_if(d.shape.wounds.begin(), d.shape.wounds.end(), [&](const auto& w) { return w.wound.value == part.id; });
            if (wound == d.shape.wounds.end() || wound->winters == 0) continue;
            if (2 * wound->radii.mean() * std::sqrt(wound->drawn_share) < 0.010) continue;
            const glm::vec2 middle = d.place(wound->face);
            const shape::Vec3 eye{static_cast<double>(d.camera.eye.x), static_cast<double>(d.camera.eye.y), static_cast<double>(d.camera.eye.z)};
            if (!d.inside(middle, 40) || d.distance(wound->face) > 0.8 || shape::dot(shape::unit(eye - wound->face), wound->outward) < 0.5) continue;
            int low = d.width, high = -1, bottom = d.height, top = -1;
            for (const std::size_t i : test::covered_alone(*b, d, part)) {
                const int x = static_cast<int>(i) % d.width, y = static_cast<int>(i) / d.width;
                low = std::min(low, x), high = std::max(high, x), bottom = std::min(bottom, y), top = std::max(top, y);
            }
            CHECK(std::max(high - low, top - bottom) + 1 >= 8);
            ++wide;
        }
    }
    MESSAGE(wide << " wounds");
    CHECK(wide >= 2);
}

TEST_CASE("buds of a grown vine within reach can be counted: each that nothing hides is one patch, 4 px wide and 10 px large") {
    NEED_A_PICTURE
    int counted = 0;
    for (const Vine& vine : test::vines_to_read())
    for (const auto& size : test::sizes_to_read())
    for (const auto view : {scene::View::head, scene::View::cane}) {
        const Drawing d = drawn(*b, vine, view, scene::Sky::sun, size.first, size.second, false);
        for (std::uint32_t k = 0; k < d.vine.parts.size(); ++k) {
            const mesh::Part& part = d.vine.parts[k];
            if (part.kind != mesh::PartKind::bud) continue;
            const auto& bud = *std::find_if(d.shape.buds.begin(), d.shape.buds.end(), [&](const auto& s) { return s.bud.value == part.id; });
            if (bud.kind != BudKind::node || d.distance(bud.foot) > 0.84 || !d.inside(d.place(bud.foot), 12)) continue;
            std::set<std::pair<int, int>> seen;
            const auto covers = test::covered_alone(*b, d, part);
            for (const std::size_t i : covers)
                if (d.part(i) == k + 1) seen.insert({static_cast<int>(i) % d.width, static_cast<int>(i) / d.width});
            if (covers.size() < 10 || seen.size() * 10 < covers.size() * 9) continue;  // hidden in part, or behind its own node
            int low = d.width, high = -1, bottom = d.height, top = -1;
            for (const auto& [x, y] : seen) low = std::min(low, x), high = std::max(high, x), bottom = std::min(bottom, y), top = std::max(top, y);
            CHECK(std::max(high - low, top - bottom) + 1 >= 4);
            CHECK(one_patch(seen));
            ++counted;
        }
    }
    MESSAGE(counted << " buds");
    CHECK(counted >= 20);
}
