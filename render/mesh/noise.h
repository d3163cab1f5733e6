// Even, repeatable variation for what is only looked at. Never for anything that is counted or judged.
#pragma once

#include <cmath>
#include <cstdint>

#include "sim/core/random.h"

namespace spurwright::mesh::noise {

inline double unit(std::uint32_t part, std::uint32_t nth, std::uint32_t trait = 7001) {
    return spurwright::unit(draw(0x5eed, trait, part, nth));
}
inline double between(double low, double high, std::uint32_t part, std::uint32_t nth, std::uint32_t trait = 7001) {
    return low + (high - low) * unit(part, nth, trait);
}

// Smooth, about -1 to 1, cells of size 1.
inline double smooth(double x, double z, std::uint32_t layer) {
    const double fx = std::floor(x), fz = std::floor(z);
    const double tx = x - fx, tz = z - fz, sx = tx * tx * (3 - 2 * tx), sz = tz * tz * (3 - 2 * tz);
    const auto corner = [&](int i, int k) {
        return unit(static_cast<std::uint32_t>(static_cast<std::int32_t>(fx) + i + 100'000),
                    static_cast<std::uint32_t>(static_cast<std::int32_t>(fz) + k + 100'000), layer);
    };
    const double a = corner(0, 0) + sx * (corner(1, 0) - corner(0, 0)),
                 b = corner(0, 1) + sx * (corner(1, 1) - corner(0, 1));
    return 2 * (a + sz * (b - a)) - 1;
}

} // namespace spurwright::mesh::noise
