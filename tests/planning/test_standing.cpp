// The search under houses that ask for more: kickers, spares, the direction of spurs, buds for those killed, a weight. The sum
// of the pieces is still what the judge says, and nothing beats the best.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_check.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

struct NamedHouse {
    const char* name;
    rules::HouseRules rules;
};

std::vector<NamedHouse> demanding_houses() {
    std::vector<NamedHouse> all{{"one kicker", {}}, {"two kickers and a spare", {}}, {"two spares", {}}, {"frost over", {}},
                                {"spurs up", {}}, {"a third killed", {}}, {"weighed", {}}, {"all of it", {}}};
    all[0].rules.standing = {1, 0, false};
    all[1].rules.standing = {2, 1, false};
    all[2].rules.standing = {0, 2, false};
    all[3].rules.standing = {1, 0, true};
    const auto turn_on = [](rules::HouseRules& house, rules::RuleName name, std::int32_t weight) {
        house.weighed[rules::index_of(name)] = {weight, true};
    };
    turn_on(all[4].rules, rules::RuleName::spur_direction, 40);
    all[4].rules.spur_direction.first_bud = rules::FirstBud::up;
    all[5].rules.bud_kill.killed = PerMille{350};
    turn_on(all[5].rules, rules::RuleName::bud_kill_adjust, 30);
    all[6].rules.prunings_weighed.asked = true;
    rules::HouseRules& every = all[7].rules;
    every.standing = {1, 1, false};
    turn_on(every, rules::RuleName::spur_direction, 20);
    every.bud_kill.killed = PerMille{250};
    every.prunings_weighed.asked = true;
    return all;
}

growth::Site site(std::uint32_t number) {
    growth::Site s;
    s.seed = 8'100 + number;
    s.age = 5 + 3 * static_cast<int>(number % 5);
    s.pruner = static_cast<Pruner>(number % 4);
    return s;
}

}  // namespace

TEST_SUITE("planning/standing") {
    TEST_CASE("the sum of the pieces is what the judge says, for choices of small and grown vines") {
        int asked_kickers = 0, not_asked = 0;
        for (const NamedHouse& house : demanding_houses()) {
            CAPTURE(house.name);
            std::vector<Vine> vines;
            for (const test::NamedVine& small : test::small_vines()) vines.push_back(small.vine);
            for (std::uint32_t number = 0; number < 5; ++number) vines.push_back(test::grown(site(number)));
            std::uint64_t seed = 0;
            for (const Vine& vine : vines) {
                const VineTables tables = vine_tables(vine, house.rules);
                const test::Judged judged{vine, house.rules};
                asked_kickers += judged.asked.kickers;
                not_asked += house.rules.standing.kickers > 0 && !judged.asked.kickers;
                int differ = 0;
                std::string first;
                for (int i = 0; i < 25; ++i) {
                    const auto pick = test::random_pick(tables.tables, ++seed);
                    if (!pick) break;
                    if (!test::agrees(tables, judged, *pick) && differ++ == 0) first = test::difference(tables, judged, *pick);
                }
                CAPTURE(first);
                CHECK(differ == 0);
            }
        }
        CHECK(asked_kickers > 10);
        CHECK(not_asked > 0);  // vines with too few canes
    }
    TEST_CASE("the best plan stands what it was asked to stand, legally, and no plan gone wrong beats it") {
        int judged_plans = 0;
        for (const NamedHouse& house : demanding_houses())
            for (std::uint32_t number = 0; number < 3; ++number) {
                CAPTURE(house.name);
                const Vine vine = test::grown(site(number));
                const Planning planning(vine, house.rules);
                const test::Judged judged{vine, house.rules};
                const auto good = planning.top(10);
                REQUIRE_FALSE(good.empty());
                const auto after = prune(vine, good[0].plan);
                REQUIRE(after.has_value());
                CHECK_FALSE(check_vine(*after).has_value());
                const auto facts = rules::measure_plan(vine, *after, house.rules, judged.offers);
                const bool frost_over = house.rules.standing.frost_over;
                CHECK(facts.standing.kickers.size() == static_cast<std::size_t>(judged.asked.kickers && !frost_over ? house.rules.standing.kickers : 0));
                CHECK(facts.standing.spares_cut == (judged.asked.spares ? house.rules.standing.spares : 0));
                CHECK(facts.standing.forgotten == 0);
                CHECK(facts.clearing.pieces_left.empty());
                CHECK(parse_plan(print_plan(good[0].plan)) == good[0].plan);
                for (std::uint64_t i = 0; i < 30; ++i) {
                    const auto spoilt = judged(test::spoilt(vine, good[i % good.size()].plan, 70 + i));
                    if (!spoilt) continue;
                    ++judged_plans;
                    CHECK(spoilt->points <= good[0].points);
                }
            }
        CHECK(judged_plans > 300);
    }
    TEST_CASE("a spare is cut after the last tie; cut before, it costs") {
        rules::HouseRules house;
        house.standing.spares = 1;
        const Vine vine = test::grown(site(1));
        const test::Judged judged{vine, house};
        REQUIRE(judged.asked.spares);
        const auto best = Planning(vine, house).best();
        Plan early = best->plan;
        const auto mark = std::find_if(early.edits.begin(), early.edits.end(), [](const Edit& e) {
            const auto* m = std::get_if<Mark>(&e);
            return m && m->role == Role::spare;
        });
        REQUIRE(mark != early.edits.end());
        const AxisId spare = std::get<Mark>(*mark).axis;
        const auto last_cut = std::find_if(early.edits.rbegin(), early.edits.rend(), [](const Edit& e) { return std::holds_alternative<Cut>(e); });
        const auto last_tie = std::find_if(early.edits.rbegin(), early.edits.rend(), [](const Edit& e) { return std::holds_alternative<Fasten>(e); });
        CHECK(last_cut < last_tie);  // from the back: the cut comes after
        if (axis_of(std::get<Cut>(*last_cut).past) == spare) {
            const Edit cut = *last_cut;
            early.edits.erase(std::next(last_cut).base());
            early.edits.insert(std::find_if(early.edits.begin(), early.edits.end(), [](const Edit& e) { return std::holds_alternative<Lay>(e); }), cut);
            CHECK(judged(early)->points < best->points);
        }
        Plan forgotten = best->plan;
        forgotten.edits.erase(std::remove_if(forgotten.edits.begin(), forgotten.edits.end(), [&](const Edit& e) {
            const auto* c = std::get_if<Cut>(&e);
            return c && axis_of(c->past) == spare;
        }), forgotten.edits.end());
        if (forgotten.edits.size() < best->plan.edits.size()) CHECK(judged(forgotten)->points < best->points);
    }
}
