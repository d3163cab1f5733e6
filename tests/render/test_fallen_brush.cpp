// What was cut off comes down, lies on the soil, and is gone when its wood stands again.
#include <doctest/doctest.h>

#include <cmath>

#include "render/mesh/ground_mesh.h"
#include "render/mesh/octahedral.h"
#include "render/mesh/vine_mesh.h"
#include "render/scene/fallen_brush.h"
#include "sim/pruning/plan.h"
#include "tests/render/vines.h"

using namespace spurwright;
using namespace spurwright::scene;

namespace {

Edit cut_at(std::uint32_t axis, std::uint32_t node) { return Cut{node_id(AxisId{axis}, node), Length{5'000}, {}, {}}; }

shape::VineShape after(std::vector<Edit> edits) { return shape::vine_shape(*prune(test::little_vine(), Plan{std::move(edits)})); }

double lowest(const mesh::Mesh& m) {
    double low = 1e9;
    for (const auto& v : m.vertices) low = std::min(low, static_cast<double>(v.position[1]));
    return low;
}

// Of the vertices over the soil under them.
double clearance(const mesh::Mesh& m) {
    double least = 1e9;
    for (const auto& v : m.vertices)
        least = std::min(least, static_cast<double>(v.position[1]) - mesh::ground_height(static_cast<double>(v.position[0]), static_cast<double>(v.position[2])));
    return least;
}

} // namespace

TEST_CASE("a direction in two bytes is read back within a degree and a half") {
    for (int i = 0; i < 200; ++i) {
        const mesh::Vec3 d = shape::unit({std::sin(1.0 * i), std::cos(2.3 * i), std::sin(0.7 * i + 1)});
        std::int8_t bytes[2];
        mesh::set_octahedral(bytes, d);
        CHECK(shape::dot(mesh::from_octahedral(bytes), d) > 0.9996);
    }
}

TEST_CASE("every piece of a grown vine falls ever lower and comes to lie on the soil, on the alley's side, within a second") {
    const Vine vine = test::grown_vine(7);
    const auto whole = shape::vine_shape(vine);
    int seen = 0;
    for (const auto& stem : whole.stems) {
        if (stem.wood != shape::Wood::one_year || stem.lateral || stem.nodes.size() < 4) continue;
        const auto cut = prune(vine, Plan{{Cut{stem.nodes[2].node, Length{8'000}, {}, {}}}});
        if (!cut) continue;
        for (const auto& piece : shape::fallen_pieces(whole, shape::vine_shape(*cut))) {
            ++seen;
            const Fall fall = fall_of(piece);
            CHECK(fall.seconds > 0.3);
            CHECK(fall.seconds < 1);
            // As it hung, to the last place.
            CHECK(shape::length(pose_at(fall, 0).of(piece.cut) - piece.cut) < 1e-9);
            double height = piece.balance.y;
            for (int k = 1; k <= 10; ++k) {
                const double now = pose_at(fall, fall.seconds * k / 10).of(piece.balance).y;
                CHECK(now < height);
                height = now;
            }
            mesh::Mesh body, lying;
            mesh::build_brush(body, piece.shape, mesh::slow_detail);
            mesh::add_posed(lying, body, pose_at(fall, 5));
            CHECK(clearance(lying) > -0.06); // a tendril or a lateral may lie in the grass
            CHECK(clearance(lying) < 0.02);
            CHECK(pose_at(fall, 5).of(piece.balance).z > 0.15);
            const mesh::Pose pose = pose_at(fall, 0.4 * fall.seconds);
            CHECK(shape::dot(pose.x, pose.y) == doctest::Approx(0).epsilon(1e-9));
            CHECK(shape::length(shape::cross(pose.x, pose.y) - pose.z) < 1e-9);
        }
    }
    CHECK(seen > 10);
}

TEST_CASE("a body turned and moved keeps its triangles, its parts and the length of its normals") {
    const auto pieces = shape::fallen_pieces(after({}), after({cut_at(5, 1)}));
    REQUIRE(pieces.size() == 1);
    mesh::Mesh body, all;
    mesh::build_brush(body, pieces[0].shape, mesh::slow_detail);
    const mesh::Pose pose = pose_at(fall_of(pieces[0]), 0.3);
    mesh::add_posed(all, body, {});
    mesh::add_posed(all, body, pose);
    CHECK(all.triangle_count() == 2 * body.triangle_count());
    REQUIRE(all.parts.size() == 2 * body.parts.size());
    for (std::size_t i = 0; i < body.vertices.size(); ++i) {
        const mesh::Vertex &was = body.vertices[i], &is = all.vertices[body.vertices.size() + i];
        CHECK(is.part == was.part + body.parts.size());
        const float size = is.normal[0] * is.normal[0] + is.normal[1] * is.normal[1] + is.normal[2] * is.normal[2];
        const float before = was.normal[0] * was.normal[0] + was.normal[1] * was.normal[1] + was.normal[2] * was.normal[2];
        CHECK(size == doctest::Approx(static_cast<double>(before)).epsilon(1e-4));
    }
    for (std::size_t m = 0; m < mesh::material_count; ++m)
        for (const std::uint32_t i : all.indices[m]) CHECK(i < all.vertices.size());
}

TEST_CASE("cuts in quick succession fall each in its own time; taking one back takes its piece away at once") {
    FallenBrush brush;
    const auto whole = after({}), one = after({cut_at(5, 1)}), two = after({cut_at(5, 1), cut_at(7, 2)});
    brush.change(whole, one, false);
    CHECK(brush.falls());
    CHECK(brush.advance(0.2));
    brush.change(one, two, false);
    mesh::Mesh falling, lying;
    brush.build_falling(falling, mesh::slow_detail);
    brush.build_lying(lying, mesh::slow_detail);
    CHECK(lying.triangle_count() == 0);
    const std::size_t both = falling.triangle_count();
    const std::uint64_t lying_change = brush.lying_change();
    for (int k = 0; k < 8 && brush.lying_change() == lying_change; ++k) brush.advance(0.05);
    CHECK(brush.falls()); // the first lies, the second still falls
    brush.build_falling(falling, mesh::slow_detail);
    brush.build_lying(lying, mesh::slow_detail);
    CHECK(lying.triangle_count() > 0);
    CHECK(falling.triangle_count() > 0);
    CHECK(lying.triangle_count() + falling.triangle_count() == both);
    brush.change(two, one, false); // undo
    CHECK_FALSE(brush.falls());
    brush.build_falling(falling, mesh::slow_detail);
    CHECK(falling.triangle_count() == 0);
    brush.change(one, whole, false);
    CHECK(brush.empty());
    CHECK_FALSE(brush.advance(1));
}

TEST_CASE("with motion reduced nothing falls: it lies at once") {
    FallenBrush brush;
    const auto whole = after({}), one = after({cut_at(5, 1)});
    brush.change(whole, one, true);
    CHECK_FALSE(brush.falls());
    mesh::Mesh lying, falling;
    brush.build_lying(lying, mesh::slow_detail);
    brush.build_falling(falling, mesh::slow_detail);
    CHECK(falling.triangle_count() == 0);
    CHECK(lying.triangle_count() > 100);
    CHECK(lowest(lying) < 0.05);
    brush.forget();
    CHECK(brush.empty());
}
