#include <doctest/doctest.h>

#include <cmath>

#include "render/mesh/vine_mesh.h"
#include "render/scene/draw_list.h"
#include "render/scene/picking.h"
#include "render/scene/views.h"
#include "tests/render/vines.h"

using namespace spurwright;
using namespace spurwright::scene;

namespace {

constexpr float aspect = 16.0f / 9;

Ray ray_to(const Camera& camera, glm::vec3 place) { return {camera.eye, glm::normalize(place - camera.eye)}; }

glm::vec3 of(shape::Vec3 v) { return {v.x, v.y, v.z}; }

} // namespace

TEST_CASE("the first view stands in the alley, eyes at 1.6 m, and holds every cane to its top and the laid canes to their ends") {
    for (const std::uint64_t seed : {1u, 3u, 5u, 7u, 9u, 11u, 13u, 15u}) {
        const auto shape = shape::vine_shape(test::grown_vine(seed, 4 + static_cast<int>(seed)));
        for (const View view : {View::row, View::other_side}) {
            const Camera camera = camera_of(view, shape);
            CHECK(std::fabs(camera.eye.z) >= 0.75f);
            CHECK(std::fabs(camera.eye.z) <= static_cast<float>(shape.row_spacing) - 0.3f + 1e-4f); // clear of the next row
            CHECK(camera.eye.y == doctest::Approx(1.6));
            CHECK(camera.fov_deg <= 50);
            CHECK((camera.eye.z > 0) == (view == View::row));
            const glm::mat4 clip_from = clip_from_world(camera, aspect);
            float top = -1;
            for (const auto& stem : shape.stems) {
                if (stem.trunk) continue;
                for (const auto& point : stem.line.points()) {
                    if (point.place.y < shape.head.y - 0.05) continue; // a sucker at the foot
                    const glm::vec4 c = clip_from * glm::vec4(of(point.place), 1);
                    CHECK(std::fabs(c.x) < c.w);
                    CHECK(c.y > -0.7f * c.w); // the tools lie below, with the tapes out
                    top = std::max(top, c.y / c.w);
                }
            }
            CHECK(top < 0.75f); // the step band lies above
            CHECK(top > 0.6f);
        }
    }
}

TEST_CASE("the whole view holds every cane with the hedge cut, and the trunk's head") {
    const auto shape = shape::vine_shape(test::grown_vine(7));
    const glm::mat4 clip_from = clip_from_world(camera_of(View::whole, shape), aspect);
    for (const auto& stem : shape.stems)
        for (const auto& node : stem.nodes) {
            if (node.place.y < 0.6) continue;
            const glm::vec4 clip = clip_from * glm::vec4(of(node.place), 1);
            CHECK(std::fabs(clip.x) < clip.w);
            CHECK(std::fabs(clip.y) < clip.w);
        }
}

TEST_CASE("one stands in the row and cannot fly") {
    RowStance s;
    s.off = 5;
    s.lean_in = 3;
    s.pitch_deg = -89;
    s.yaw_deg = 200;
    s = held(s);
    CHECK(s.off == doctest::Approx(1.3));
    CHECK(s.lean_in == doctest::Approx(0.25));
    CHECK(s.pitch_deg == doctest::Approx(-75));
    CHECK(s.yaw_deg == doctest::Approx(70));
}

TEST_CASE("pixels a metre as the picture's arithmetic has them") {
    Camera camera;
    CHECK(pixels_a_metre(camera, 1.0f, 720) == doctest::Approx(938).epsilon(0.001));
    CHECK(pixels_a_metre(camera, 2.6f, 1080) == doctest::Approx(541).epsilon(0.001));
}

TEST_CASE("a ray at a cane picks its axis, the node below and the place between") {
    const auto shape = shape::vine_shape(test::little_vine());
    const Capsules capsules(shape);
    const Camera camera = camera_of(View::row, shape);
    const auto& stem = *shape.find(AxisId{4});
    const auto place = shape::lerp(stem.nodes[2].place, stem.nodes[3].place, 0.3);
    const auto p = picked(capsules, ray_to(camera, of(place)), {});
    REQUIRE(p);
    CHECK(p->kind == mesh::PartKind::stem);
    CHECK(p->axis == AxisId{4});
    CHECK(p->node == node_id(AxisId{4}, 2));
    CHECK(p->share == doctest::Approx(0.3).epsilon(0.05));
    CHECK(p->hit);
}

TEST_CASE("beside the wood: 1.5 mrad still count, more only for a finger") {
    const auto shape = shape::vine_shape(test::little_vine());
    const Capsules capsules(shape);
    const Camera camera = camera_of(View::row, shape);
    const auto& stem = *shape.find(AxisId{5});
    const auto middle = shape::lerp(stem.nodes[3].place, stem.nodes[4].place, 0.5);
    const double radius = stem.line.at(4, 0.5).radii.mean(), away = glm::length(of(middle) - camera.eye);
    const auto beside = [&](double mrad) {
        return ray_to(camera, of(middle - shape::Vec3{radius + 0.001 * mrad * away, 0, 0}));
    };
    CHECK(picked(capsules, beside(1.0), {})->axis == AxisId{5});
    CHECK_FALSE(picked(capsules, beside(1.0), {})->hit);
    const auto missed = picked(capsules, beside(4.0), {});
    CHECK((!missed || missed->axis != AxisId{5}));
    Reach finger;
    finger.extra_pixels = 6;
    CHECK(picked(capsules, beside(4.0), finger)->axis == AxisId{5});
}

TEST_CASE("a bud, a wire, a tie and a post can be picked") {
    const auto shape = shape::vine_shape(test::little_vine());
    const Capsules capsules(shape);
    const Camera camera = camera_of(View::head, shape);
    int buds = 0, asked = 0;
    for (const auto& bud : shape.buds) {
        if (bud.kind != BudKind::node || bud.out.z < 0.3) continue;
        const shape::Vec3 tip = bud.foot + (bud.stem_radius + 0.001) * bud.out + 0.002 * bud.along;
        const auto p = picked(capsules, ray_to(camera, of(tip)), {});
        ++asked;
        buds += p && p->kind == mesh::PartKind::bud && p->id == bud.bud.value;
    }
    CHECK(asked >= 3);
    CHECK(buds == asked);
    const auto wire = picked(capsules, ray_to(camera, {0.4f, 0.9f, 0}), {});
    REQUIRE(wire);
    CHECK(wire->kind == mesh::PartKind::wire);
    CHECK(wire->id == 1);
    const auto tie = picked_all(capsules, ray_to(camera, of(shape.ties[0].cane)), {});
    bool has_tie = false;
    for (const auto& p : tie) has_tie = has_tie || p.kind == mesh::PartKind::tie;
    CHECK(has_tie);
    CHECK_FALSE(picked(capsules, {camera.eye, {0, 0.7f, 0.714f}}, {}));
}

TEST_CASE("the quick scan finds what a scan of every capsule finds") {
    const auto shape = shape::vine_shape(test::grown_vine(2));
    const Capsules capsules(shape);
    const Camera camera = camera_of(View::row, shape);
    int hits = 0;
    for (int i = 0; i < 400; ++i) {
        const Ray ray = ray_through(camera, 0.02f + 0.96f * static_cast<float>(i % 20) / 19,
                                    0.02f + 0.96f * static_cast<float>(i / 20) / 19, aspect);
        const auto found = picked_all(capsules, ray, {});
        std::size_t whole = 0;
        for (const Capsule& c : capsules.all()) { // one at a time, without its holding sphere's company
            Capsules alone;
            alone.add(c);
            whole += picked_all(alone, ray, {}).size();
        }
        CHECK(found.size() == whole);
        hits += !found.empty();
        for (std::size_t k = 1; k < found.size(); ++k)
            if (found[0].hit) CHECK((found[k].miss >= found[k - 1].miss || k == 1));
    }
    CHECK(hits > 40); // from the alley wood covers about one ray in eight
}

TEST_CASE("a draw list joins ranges, and an emphasis of an axis takes its buds and faces along") {
    const auto shape = shape::vine_shape(test::little_vine());
    mesh::Mesh vine, around;
    mesh::build_vine(vine, shape, mesh::slow_detail);
    mesh::build_surroundings(around, shape, mesh::slow_detail);
    const Camera camera = camera_of(View::row, shape);
    const auto plain = draw_list(vine, around, {}, camera, light_of(Sky::sun));
    CHECK(plain.items.size() <= 2 * mesh::material_count);
    Look look;
    look.colour = {1, 1, 0};
    look.outline_px = 2;
    const Emphasis chosen{AxisId{5}, {}, 0, look};
    const auto marked = draw_list(vine, around, std::span(&chosen, 1), camera, light_of(Sky::sun));
    std::size_t marked_indices = 0, wanted = 0, all = 0, sum = 0;
    for (const auto& item : marked.items) {
        if (item.look.colour == look.colour) marked_indices += item.count;
        if (item.material == mesh::Material::thin) CHECK(item.look.outline_px == 0);
        sum += item.count;
    }
    for (const auto& part : vine.parts)
        if (part.axis == AxisId{5}) wanted += part.count;
    for (const auto* mesh : {&vine, &around})
        for (const auto& list : mesh->indices) all += list.size();
    CHECK(marked_indices == wanted);
    CHECK(sum == all);
}
