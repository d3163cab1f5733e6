// The same proofs on vines grown by their history: ages 3 and 4, one-sided and neglected ones, every pruner,
// with and without neighbours; 2,000 sampled choices in all, each carried out and judged.
#include <doctest/doctest.h>

#include "sim/growth/history.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_check.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

// Forty sites that differ in all that a search can feel.
growth::Site site(std::uint32_t number) {
    constexpr std::array ages{3, 4, 5, 8, 12, 12, 20, 30};
    constexpr std::array spacings{1.2, 1.5, 1.8, 2.4};
    growth::Site s;
    s.seed = 1000 + number;
    s.age = ages[number % ages.size()];
    s.spacing_m = spacings[number / 2 % spacings.size()];
    s.pruner = static_cast<Pruner>(number % 8);
    s.vigour = static_cast<Vigour>(number % 3);
    s.neighbours = static_cast<growth::Neighbours>(number / 4 % 4);
    s.graft = number % 3 != 1;
    s.head_below_mm = number % 7 == 6 ? 60 : 130;
    return s;
}
constexpr std::uint32_t sites = 40;

Vine grown(std::uint32_t number) {
    return test::grown(site(number));
}

}  // namespace

TEST_SUITE("planning/grown-vines") {
    const rules::HouseRules house;

    TEST_CASE("the sum of the pieces is what the judge says, for 2,000 choices of forty vines") {
        int judged_choices = 0, one_sided = 0, with_suckers = 0;
        for (std::uint32_t number = 0; number < sites; ++number) {
            const Vine vine = grown(number);
            const VineTables tables = vine_tables(vine, house);
            const test::Judged judged{vine, house};
            int differ = 0;
            std::string first;
            for (std::uint64_t i = 0; i < 50; ++i) {
                const auto pick = test::random_pick(tables.tables, number * 1'000 + i);
                if (!pick) break;
                ++judged_choices;
                if (!test::agrees(tables, judged, *pick) && differ++ == 0)
                    first = test::difference(tables, judged, *pick);
            }
            const auto& sides = judged.offers.sides;
            one_sided += sides[0].canes.empty() != sides[1].canes.empty();
            for (const Piece& piece : tables.pieces) with_suckers += piece.sucker;
            CAPTURE(number);
            CAPTURE(first);
            CHECK(differ == 0);
        }
        CHECK(judged_choices >= 1'900);
        CHECK(one_sided > 0);
        CHECK(with_suckers > 0);
    }

    TEST_CASE("the best plan of each is legal, keeps the vine sound, and is worth what the judge gives it") {
        for (std::uint32_t number = 0; number < sites; ++number) {
            CAPTURE(number);
            const Vine vine = grown(number);
            const Planning planning(vine, house);
            const auto best = planning.best();
            if (!best) continue;
            const auto after = prune(vine, best->plan);
            REQUIRE(after.has_value());
            CHECK_FALSE(check_vine(*after).has_value());
            const rules::Judgement judgement = rules::judge(vine, *after, house);
            CHECK(judgement.points == best->points);
            CHECK(judgement.points_before_caps == best->sum);
            CHECK(parse_plan(print_plan(best->plan)) == best->plan);
            CHECK(planning.count(best->points).better == 0);
            CHECK(best_pick(planning.tables().tables) == best_pick(planning.tables().tables, Bound::off));
            const auto top = planning.top(3);
            CHECK(top.front() == *best);
            for (const BestPlan& plan : top) CHECK(pick_of(planning.tables(), plan.choice).has_value());
        }
    }
}
