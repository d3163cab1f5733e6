// Check 6: frames carried along a helix.
#include <algorithm>
#include <cmath>

#include "sim/checks/compared.h"
#include "sim/core/numeric.h"
#include "sim/shape/frames.h"

namespace spurwright::checks {
namespace {

// The helix (cos t, sin t, t / 2), t from 0 to 4 pi: its exact frame is Frenet's normal turned back by torsion x
// length. The largest angle between that and the carried frame, rad.
double helix_error(int steps) {
    using shape::Vec3;
    const double speed = std::sqrt(1.25), torsion = 0.5 / 1.25;
    std::vector<Vec3> points, tangents;
    for (int i = 0; i <= steps; ++i) {
        const double t = 4 * numeric::pi * i / steps;
        const auto [sine, cosine] = numeric::sincos(t);
        points.push_back({cosine, sine, t / 2});
        tangents.push_back(1 / speed * Vec3{-sine, cosine, 0.5});
    }
    const auto frames = shape::frames_along(points, tangents, {-1, 0, 0});
    double worst = 0;
    for (int i = 0; i <= steps; ++i) {
        const double t = 4 * numeric::pi * i / steps;
        const auto around = numeric::sincos(t), back = numeric::sincos(-torsion * speed * t);
        const Vec3 normal{-around.cosine, -around.sine, 0};
        const auto k = static_cast<std::size_t>(i);
        const Vec3 exact = back.cosine * normal + back.sine * cross(tangents[k], normal);
        worst = std::max(worst, length(cross(exact, frames[k].out))); // a sine so small is its angle
    }
    return worst;
}

} // namespace

Numbers helix_frames() {
    const double coarse = helix_error(64), fine = helix_error(128);
    return {near("error at 64 steps, rad", 1.857e-6, 0.002e-6, coarse),
            within("order", 3.9, 4.1, numeric::log2(coarse / fine))};
}

} // namespace spurwright::checks
