// Double pruning, first pass: the stubs that the works ask for, what must not be cut, and the best plan of it against every
// way to leave three canes.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/growth/history.h"
#include "sim/planning/cordon.h"
#include "sim/planning/first_pass_plan.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/first_pass.h"
#include "sim/rules/judge.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

rules::Judgement judged_pass(const Vine& vine, const Plan& plan) {
    const auto after = prune(vine, plan);
    REQUIRE(after.has_value());
    return rules::judge_first_pass(vine, *after, house);
}

PerMille mark_of_stub(double left_mm, double whole_mm = 900, bool gone = false) {
    return rules::mark_stub({AxisId{9}, Side::left, from_mm(whole_mm), gone ? Length{} : from_mm(left_mm), true, gone}, house);
}

Vine grown_cordon(std::uint32_t seed) {
    growth::Site site;
    site.system = System::cordon;
    site.seed = 900 + seed;
    site.age = 8 + static_cast<int>(seed) * 3 % 12;
    return test::grown(site);
}

}  // namespace

TEST_SUITE("planning/first-pass") {
    TEST_CASE("10 to 12 inches above the spurs cost nothing [california-trunk]") {
        CHECK(mark_of_stub(254) == rules::full_mark);
        CHECK(mark_of_stub(304) == rules::full_mark);
    }
    TEST_CASE("30 to 45 cm above spur height cost nothing [vineworks-frost]") {
        CHECK(mark_of_stub(300) == rules::full_mark);
        CHECK(mark_of_stub(450) == rules::full_mark);
    }
    TEST_CASE("200 and 525 mm cost half, 150 and 600 all, a good cane that is gone all: our choice") {
        CHECK(mark_of_stub(200) == rules::half_mark);
        CHECK(mark_of_stub(525) == rules::half_mark);
        CHECK(mark_of_stub(150) == rules::no_mark);
        CHECK(mark_of_stub(601) == rules::no_mark);
        CHECK(mark_of_stub(0, 900, true) == rules::no_mark);
        CHECK(mark_of_stub(240, 240) == rules::full_mark);  // no longer from the start
        CHECK(mark_of_stub(100, 240) == rules::no_mark);    // but then not cut either
    }

    TEST_CASE("of every way to leave the hand-drawn cordon's canes none is better than the plan, which is worth 100") {
        const Vine vine = test::cordon_vine();
        // Its canes are 110 to 300 mm long, so nothing is due; and whatever is cut instead costs.
        CHECK(first_pass_plan(vine, house).edits.empty());
        const rules::Judgement best = judged_pass(vine, {});
        CHECK(best.points == Tenths{1000});
        Tenths shares;
        for (const rules::Finding& f : best.findings) shares += f.out_of;
        CHECK(shares == Tenths{1000});
        int tried = 0;
        for (int a = 0; a < 4; ++a)
            for (int b = 0; b < 4; ++b)
                for (int c = 0; c < 4; ++c) {
                    Plan plan;
                    for (const auto& [axis, way] : {std::pair{9u, a}, {14u, b}, {16u, c}})
                        if (way > 0) plan.edits.push_back(Cut{node_id(AxisId{axis}, static_cast<std::uint32_t>(way - 1)), from_mm(20), Tool::shears, {}});
                    CHECK(judged_pass(vine, plan).points <= best.points);
                    CHECK((judged_pass(vine, plan).points == best.points) == (a + b + c == 0));
                    ++tried;
                }
        CHECK(tried == 64);
    }

    TEST_CASE("on grown cordons the plan is legal, keeps the vine sound, cuts no old wood, reads back and is worth 100; spurs can still be made of all") {
        int cuts = 0;
        for (std::uint32_t seed = 0; seed < test::sized(8u, 60u); ++seed) {
            const Vine vine = grown_cordon(seed);
            CAPTURE(seed);
            const Plan plan = first_pass_plan(vine, house);
            CHECK(parse_plan(print_plan(plan)) == plan);
            const auto after = prune(vine, plan);
            REQUIRE(after.has_value());
            CHECK_FALSE(check_vine(*after).has_value());
            const rules::Judgement mine = rules::judge_first_pass(vine, *after, house);
            CHECK(mine.points == Tenths{1000});
            cuts += static_cast<int>(plan.edits.size());
            for (const Edit& edit : plan.edits) CHECK(age(vine, *vine.find(axis_of(std::get<Cut>(edit).past))) == 1);
            const rules::CordonRow before_row = rules::cordon_row(vine, house), row = rules::cordon_row(*after, house);
            for (const std::size_t side : {0u, 1u}) CHECK(row[side].size() == before_row[side].size());
            // Nothing done, where canes are long, is no first pass.
            if (plan.edits.size() > 5) CHECK(judged_pass(vine, {}).points < Tenths{600});
        }
        CHECK(cuts > 60);
    }

    TEST_CASE("a cut in old wood takes what old wood weighs, and the canes beyond it") {
        const Vine vine = test::cordon_vine();
        const rules::Judgement mine = judged_pass(vine, *parse_plan("cut a4.0+15.0 shears"));  // takes a9 and a10 along
        int gone = 0;
        for (const rules::Finding& f : mine.findings) {
            gone += f.said.key.name == "first-pass.gone";
            if (f.rule->name == rules::RuleName::wound_size) CHECK(f.points == Tenths{0});
        }
        CHECK(gone == 2);
        CHECK(mine.points < Tenths{700});
    }
}
