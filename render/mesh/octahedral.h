// A direction in two signed bytes: on the octahedron, unfolded to a square. The shader reads it the same way.
#pragma once

#include <cmath>
#include <cstdint>

#include "sim/shape/vec3.h"

namespace spurwright::mesh {

// `d` of any length above 0.
inline void set_octahedral(std::int8_t (&to)[2], shape::Vec3 d) {
    const auto signed_byte = [](double share) { return static_cast<std::int8_t>(std::lround(std::fmin(1, std::fmax(-1, share)) * 127)); };
    const double sum = std::fabs(d.x) + std::fabs(d.y) + std::fabs(d.z);
    double x = d.x / sum, y = d.y / sum;
    if (d.z < 0) {
        const double fx = (1 - std::fabs(y)) * (x >= 0 ? 1 : -1), fy = (1 - std::fabs(x)) * (y >= 0 ? 1 : -1);
        x = fx;
        y = fy;
    }
    to[0] = signed_byte(x);
    to[1] = signed_byte(y);
}

inline shape::Vec3 from_octahedral(const std::int8_t (&from)[2]) {
    shape::Vec3 d{from[0] / 127.0, from[1] / 127.0, 0};
    d.z = 1 - std::fabs(d.x) - std::fabs(d.y);
    if (d.z < 0) {
        const double x = (1 - std::fabs(d.y)) * (d.x >= 0 ? 1 : -1), y = (1 - std::fabs(d.x)) * (d.y >= 0 ? 1 : -1);
        d.x = x;
        d.y = y;
    }
    return shape::unit(d);
}

} // namespace spurwright::mesh
