#include <doctest/doctest.h>

#include <cmath>

#include "sim/core/numeric.h"
#include "sim/shape/frames.h"

using namespace spurwright;
using namespace spurwright::shape;

namespace {

// The helix (cos t, sin t, t / 2), t from 0 to 4 pi: its exact frame is Frenet's normal turned back by torsion x
// length.
double helix_error(int steps) {
    const double speed = std::sqrt(1.25), torsion = 0.5 / 1.25;
    std::vector<Vec3> points, tangents;
    for (int i = 0; i <= steps; ++i) {
        const double t = 4 * numeric::pi * i / steps;
        points.push_back({std::cos(t), std::sin(t), t / 2});
        tangents.push_back(1 / speed * Vec3{-std::sin(t), std::cos(t), 0.5});
    }
    const auto frames = frames_along(points, tangents, {-1, 0, 0});
    double worst = 0;
    for (int i = 0; i <= steps; ++i) {
        const double t = 4 * numeric::pi * i / steps, turn = -torsion * speed * t;
        const Vec3 normal{-std::cos(t), -std::sin(t), 0};
        const auto k = static_cast<std::size_t>(i);
        const Vec3 exact = std::cos(turn) * normal + std::sin(turn) * cross(tangents[k], normal);
        worst = std::max(worst, std::asin(std::min(1.0, length(cross(exact, frames[k].out)))));
    }
    return worst;
}

} // namespace

TEST_CASE("double reflection misses the exact frame of a helix by 1.857e-6 rad at 64 steps, order 4 [wang-2008]") {
    CHECK(helix_error(64) == doctest::Approx(1.857e-6).epsilon(0.002));
    const double order = std::log2(helix_error(64) / helix_error(128));
    CHECK(order > 3.9);
    CHECK(order < 4.1);
}

TEST_CASE("a frame stays square and of unit length along a bent line") {
    std::vector<Vec3> points, tangents;
    for (int i = 0; i < 40; ++i) {
        points.push_back({0.1 * i, std::sin(0.3 * i), std::cos(0.7 * i)});
        tangents.push_back(unit(Vec3{0.1, 0.3 * std::cos(0.3 * i), -0.7 * std::sin(0.7 * i)}));
    }
    for (const Frame& frame : frames_along(points, tangents, {0, 1, 0})) {
        CHECK(std::fabs(length(frame.out) - 1) < 1e-9);
        CHECK(std::fabs(dot(frame.out, frame.along)) < 1e-9);
    }
}
