// The vine worked out on paper, searched: how many choices, which is the best, and where Plan A stands.
#include <doctest/doctest.h>

#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/plan_count.h"
#include "sim/planning/top_plans.h"
#include "sim/planning/vine_tables.h"
#include "sim/rules/judge.h"
#include "tests/support/worked_example.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

Tables worked_tables(bool with_sucker = true) {
    std::vector<MeasuredPiece> pieces;
    for (const test::WorkedCane& cane : test::worked_canes()) {
        MeasuredPiece piece{cane.side, false, {}, {}};
        for (const Side side : both_sides)
            for (int n = 4; n <= cane.buds; ++n)
                piece.canes[at(side)].push_back(test::worked_cane_facts(cane, side, n, house));
        for (int buds = 1; buds <= 3; ++buds) piece.spurs.push_back(test::worked_spur_facts(cane, buds));
        pieces.push_back(piece);
    }
    return tables_of(pieces, test::worked_offers(house, with_sucker), test::worked_spacing, house);
}

// Rows of the tables: a11, a12, a13, a21, a22.
constexpr std::uint16_t a11 = 0, a12 = 1, a21 = 3, a22 = 4;
Pick plan(int left_bud, int right_bud) {
    return {a11, a21, static_cast<std::uint16_t>(left_bud - 4), static_cast<std::uint16_t>(right_bud - 4), a12, 2,
            a22, 2};
}

}  // namespace

TEST_SUITE("planning/worked-example") {
    TEST_CASE("17,908 choices, as counted by hand") { CHECK(count_choices(worked_tables()) == 17'908); }

    TEST_CASE("the best is unique: a11 after bud 8, a21 after bud 5, spurs a12 and a22 with two buds, 99.0") {
        const Tables tables = worked_tables();
        const Ranked best{plan(8, 5), 990, 990};
        CHECK(best_pick(tables) == best);
        CHECK(best_by_force(tables) == best);
        CHECK(tally(tables, 990) == Tally{17'908, 0, 1});
    }
    TEST_CASE("Plan A stands at 98.6 with five plans better and seven more as good") {
        const Tables tables = worked_tables();
        CHECK(points_of(tables, plan(7, 7)) == 986);
        const Tally found = tally(tables, 986);
        CHECK(found.better == 5);
        CHECK(found.equal == 8);  // itself among them
        CHECK(found == tally_by_force(tables, 986));
    }
    TEST_CASE("the same vine without its trunk shoot: Plan A again 98.6") {
        CHECK(points_of(worked_tables(false), plan(7, 7)) == 986);
    }
    TEST_CASE("every choice is worth what the judge gives its facts") {
        const Tables tables = worked_tables();
        const auto offers = test::worked_offers(house);
        const auto asked = rules::asked(offers, house);
        int differ = 0;
        const auto axis = [](std::uint16_t row) {
            return row == no_piece ? 0 : static_cast<int>(test::worked_canes()[row].axis.value);
        };
        for_each_pick(tables, [&](const Pick& p) {
            const test::WorkedChoice choice{axis(p.left_cane),  p.left_cane == no_piece ? 0 : p.left_cut + 4,
                                            axis(p.right_cane), p.right_cane == no_piece ? 0 : p.right_cut + 4,
                                            axis(p.left_spur),  p.left_buds,
                                            axis(p.right_spur), p.right_buds};
            const rules::Judgement judged = rules::judge_facts(test::worked_plan(choice, house), asked, house);
            // The paper does not say what stood on a side: the judge asks the facts whether a bare side had a good
            // cane.
            differ += judged.points_before_caps.count != sum_of(tables, p);
        });
        CHECK(differ == 0);
    }
}
