// Every switch on many vines: what holds for all of them, and what each says of itself.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>

#include "sim/core/hash.h"
#include "sim/growth/history.h"
#include "sim/growth/season.h"
#include "sim/growth/tempt.h"
#include "sim/rules/house_rules.h"
#include "sim/rules/measure_pieces.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"

namespace spurwright::test {

inline constexpr std::uint64_t switch_seeds = 40;

inline Vine grown_for_switches(std::uint64_t seed, int age = 12) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return grown(site);
}

// As the rules measure it when it is cut after its twelfth count bud, or its last ripe one.
inline rules::CaneFacts read_cane(const Vine& vine, AxisId id) {
    const rules::HouseRules house;
    const Axis& axis = *vine.find(id);
    const auto buds = ripe_count_nodes(vine, axis);
    REQUIRE(buds.size() >= 4);
    return rules::measure_wood(vine, house, axis, rules::canonical_end(vine, axis, buds[std::min<std::size_t>(buds.size(), 12) - 1]));
}
inline rules::CaneFacts read_cane(const growth::Tempted& made) { return read_cane(made.vine, made.axis); }

inline bool is_near(Length a, Length b, int by_um) { return a - b <= Length{by_um} && b - a <= Length{by_um}; }

inline bool is_sound(const rules::HealthFacts& health) {
    return !health.spot && !health.wound && !health.cracked && !health.twin && health.dead_buds == 0 && health.ripe_share == whole;
}

// Calls `seen` for each vine that offers the place, on both sides; at least a third of all must.
template <class T, class Seen>
void over_vines(const Seen& seen) {
    int offered = 0;
    for (std::uint64_t seed = 1; seed <= switch_seeds; ++seed)
        for (const Side side : both_sides) {
            const Vine vine = grown_for_switches(seed, 8 + static_cast<int>(seed % 8));
            T wanted;
            wanted.side = side;
            const auto made = growth::tempted(vine, wanted);
            CAPTURE(seed);
            CAPTURE(static_cast<int>(side));
            if (!made) {
                CHECK(std::string(made.error().key.name) == "error.tempt.no-place");
                continue;
            }
            ++offered;
            CHECK_FALSE(check_vine(made->vine).has_value());
            CHECK(made->vine.recipe == 255);
            REQUIRE(made->vine.find(made->axis) != nullptr);
            CHECK((made->vine.find(made->axis)->side == side || is_trunk(*made->vine.find(made->axis))));
            CHECK(vine_hash(growth::tempted(vine, wanted)->vine) == vine_hash(made->vine));
            CHECK(vine_hash(vine) != vine_hash(made->vine));
            CHECK_FALSE(check_vine(growth::season(made->vine, {})).has_value()); // it lives on
            seen(vine, *made, wanted);
        }
    CHECK(offered >= static_cast<int>(2 * switch_seeds / 3));
    MESSAGE(std::string(T::name), ": ", offered, " of ", 2 * switch_seeds, " vines offer a place");
}

} // namespace spurwright::test
