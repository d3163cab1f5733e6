// Vines for looking at: the hand-drawn one and grown ones.
#pragma once

#include <algorithm>
#include <vector>

#include "sim/growth/history.h"
#include "sim/growth/tempt.h"
#include "tests/support/full_size.h"
#include "tests/support/little_vine.h"

namespace spurwright::test {

inline Vine grown_vine(std::uint64_t seed, int age = 12) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return *growth::grow_vine(site);
}

// Eight to be read: two young, two even, two crowded, one that bears dead wood, one with a bull at the bend.
inline std::vector<Vine> reference_vines() {
    growth::Site crowded, many;
    crowded.seed = 5;
    crowded.vigour = Vigour::high;
    crowded.thinning = false;
    many.seed = 11;
    many.pruner = Pruner::too_many_buds;
    return {grown_vine(7), grown_vine(3), grown_vine(21, 4), grown_vine(33, 5), *growth::grow_vine(crowded), *growth::grow_vine(many), grown_vine(14, 26),
            growth::tempted(grown_vine(8), growth::BendBull{Side::right})->vine};
}

// As many of them, and in such sizes, as a test looks at: two at 1280x720 as usual, all and at 1920x1080 too under SPURWRIGHT_FULL.
inline std::vector<Vine> vines_to_read() {
    auto all = reference_vines();
    all.resize(std::min(all.size(), sized<std::size_t>(2, 8)));
    return all;
}
inline std::vector<std::pair<int, int>> sizes_to_read() {
    if (sized(false, true)) return {{1280, 720}, {1920, 1080}};
    return {{1280, 720}};
}

} // namespace spurwright::test
