// The best plan that lays a given cane: every choice of small vines that lays it, tried one by one.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/brute_force.h"
#include "sim/planning/planning.h"
#include "tests/support/judged.h"
#include "tests/support/little_vine.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

TEST_CASE("the best plan laying a cane equals brute force, for every cane and side of small vines, and is what the judge says") {
    const rules::HouseRules house;
    int asked = 0, below_the_best = 0;
    for (const Vine& vine : {test::little_vine(), test::one_sided_vine(), test::sucker_vine(), test::young_vine(), test::rough_vine()}) {
        const Planning planning(vine, house);
        const VineTables& tables = planning.tables();
        const auto best = planning.best();
        REQUIRE(best.has_value());
        for (std::uint16_t row = 0; row < tables.tables.count(); ++row)
            for (const Side side : both_sides) {
                const AxisId cane = tables.pieces[row].axis;
                const auto found = planning.best_laying(cane, side);
                CAPTURE(name_of(cane));
                CHECK(found.has_value() == tables.tables.candidates[row].lies(side));
                if (!found) continue;
                ++asked;
                int by_force = -1'000'000;
                for_each_pick(tables.tables, [&](const Pick& pick) {
                    if ((side == Side::left ? pick.left_cane : pick.right_cane) == row) by_force = std::max(by_force, points_of(tables.tables, pick));
                });
                CHECK(found->points.count == by_force);
                CHECK(axis_of(side == Side::left ? found->choice.left_cane : found->choice.right_cane) == cane);
                const auto after = prune(vine, found->plan);
                REQUIRE(after.has_value());
                CHECK(rules::judge(vine, *after, house).points == found->points);
                below_the_best += found->points < best->points;
            }
    }
    CHECK(asked >= 10);
    CHECK(below_the_best >= 5); // so that taking the best of all would be caught
}
