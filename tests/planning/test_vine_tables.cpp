// Two proofs on real vines: the sum of a choice's pieces is what the judge says of its full plan, and the exact search
// finds what nested loops find. And what follows from them: no legal plan beats the best.
#include <doctest/doctest.h>

#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/fingerprint.h"
#include "sim/planning/planning.h"
#include "sim/planning/top_plans.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/judged.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

using test::Judged;

struct Proof {
    std::uint64_t choices = 0, judged = 0, differ = 0;
    std::string first;
};

// Every `step`-th choice carried out and judged.
Proof table_is_judge(const Vine& vine, const rules::HouseRules& house, std::uint64_t step) {
    const VineTables tables = vine_tables(vine, house);
    const Judged judged{vine, house};
    Proof proof;
    for_each_pick(tables.tables, [&](const Pick& pick) {
        if (proof.choices++ % step != 0) return;
        ++proof.judged;
        if (test::agrees(tables, judged, pick)) return;
        if (proof.differ++ == 0) proof.first = test::difference(tables, judged, pick);
    });
    return proof;
}

}  // namespace

TEST_SUITE("planning/vine-tables") {
    const rules::HouseRules house;

    TEST_CASE("the sum of the pieces is what the judge says, for the choices of every small vine") {
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            const Proof proof = table_is_judge(vine, house, small.name == "little" ? 1 : 11);
            CAPTURE(small.name);
            CAPTURE(proof.choices);
            CAPTURE(proof.judged);
            CAPTURE(proof.first);
            CHECK(proof.judged > 0);
            CHECK(proof.differ == 0);
        }
    }

    TEST_CASE("and under other house rules: slow arms by creep, crossing allowed, another target, other weights") {
        rules::HouseRules other;
        other.origin_distance.measure = rules::OriginMeasure::creep;
        other.origin_distance.arm_to = Length{400'000};
        other.cane_side.over_the_head = true;
        other.bud_load.target = 11;
        other.caps = {{300}, {450}, {1'200}};
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            const Proof proof = table_is_judge(vine, other, 37);
            CAPTURE(small.name);
            CAPTURE(proof.first);
            CHECK(proof.differ == 0);
        }
    }

    TEST_CASE("the search finds the plan and the counts of nested loops on every small vine") {
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            CAPTURE(small.name);
            const VineTables tables = vine_tables(vine, house);
            const auto best = best_by_force(tables.tables);
            REQUIRE(best.has_value());
            CHECK(best_pick(tables.tables) == best);
            CHECK(top_picks(tables.tables, 1).front() == *best);
            CHECK(tally(tables.tables, best->points - 30) == tally_by_force(tables.tables, best->points - 30));
        }
    }

    TEST_CASE("the best plan is worth what the judge gives it, and nothing done is worth at most 5") {
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            CAPTURE(small.name);
            const Planning planning(vine, house);
            const Judged judged{vine, house};
            const auto best = planning.best();
            REQUIRE(best.has_value());
            const auto found = judged(best->plan);
            REQUIRE(found.has_value());
            CHECK(found->points == best->points);
            CHECK(found->points_before_caps == best->sum);
            CHECK(judged(Plan{})->points <= Tenths{50});
            const auto few = planning.top(5);
            CHECK(few.front() == *best);
            for (const BestPlan& plan : few) CHECK(judged(plan.plan)->points == plan.points);
            CHECK(planning.count(best->points).better == 0);
            CHECK(planning.count(best->points).equal >= 1);
            CHECK(planning.at_least(Tenths{-1}) == planning.counted());
        }
    }

    TEST_CASE("a line of the fingerprint names the vine, counts its choices and prints its best plan") {
        const Vine vine = test::small_vines().front().vine;
        const Planning planning(vine, house);
        CHECK(fingerprint_line(vine, house) == "c5e6dcf2ebe172d4 186 " + std::to_string(planning.best()->points.count) +
                                                   " " + print_plan(planning.best()->plan) + "\n");
    }
}
