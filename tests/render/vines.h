// Vines for looking at: the hand-drawn one and grown ones.
#pragma once

#include "sim/growth/history.h"
#include "tests/support/little_vine.h"

namespace spurwright::test {

inline Vine grown_vine(std::uint64_t seed, int age = 12) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return *growth::grow_vine(site);
}

} // namespace spurwright::test
