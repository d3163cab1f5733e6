// Vines trained to a single cane: one cane to either side and one spur in all. The search, the counts and the lists
// against nested loops; every choice of small vines carried out and judged; and what the judge says of one too many.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "sim/planning/as_good.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/charges.h"
#include "sim/planning/count_by_halves.h"
#include "sim/planning/planning.h"
#include "sim/planning/top_plans.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_check.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/mirror.h"
#include "tests/support/random_edits.h"
#include "tests/support/random_tables.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

std::vector<test::NamedVine> single_vines() {
    std::vector<test::NamedVine> all = test::small_vines();
    for (test::NamedVine& small : all) small.vine.system = System::one_cane;
    all.push_back({"single", test::single_cane_vine()});
    return all;
}

Vine grown_single(std::uint32_t seed, int age, double spacing) { return test::grown(System::one_cane, seed, age, spacing); }

Plan plan_of(const std::string& text) {
    const auto plan = parse_plan(text);
    REQUIRE(plan.has_value());
    return *plan;
}

const rules::Finding* finding(const rules::Judgement& judgement, rules::RuleName name) {
    for (const rules::Finding& f : judgement.findings)
        if (f.rule->name == name) return &f;
    return nullptr;
}

}  // namespace

TEST_SUITE("planning/single-cane") {
    TEST_CASE("on random tables of one cane and one spur the search, the counts, the list and the groups are those of nested loops") {
        int differ = 0, without_spur = 0, empty = 0;
        const std::uint32_t instances = test::sized(2'000u, 20'000u);
        for (std::uint32_t number = 0; number < instances; ++number) {
            const Tables tables = test::small_tables(number, true);
            std::vector<Ranked> all;
            for_each_pick(tables, [&](const Pick& pick) { all.push_back({pick, points_of(tables, pick), sum_of(tables, pick)}); });
            std::stable_sort(all.begin(), all.end(), better);
            const auto best = best_pick(tables);
            differ += best != best_by_force(tables) || best_pick(tables, Bound::off) != best;
            differ += count_choices(tables) != all.size();
            CHECK_FALSE(tally_by_halves(tables, 0).has_value());
            if (all.empty()) {
                ++empty;
                continue;
            }
            without_spur += best->pick.left_spur == no_piece && best->pick.right_spur == no_piece;
            for (const int points : {all.front().points, all.front().points - 7, all[all.size() / 2].points})
                differ += tally(tables, points) != tally_by_force(tables, points);
            std::vector<Ranked> first(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(15, all.size())));
            differ += top_picks(tables, 15) != first;
            const int least = all.front().points - 9;
            std::map<std::array<std::uint16_t, 4>, std::uint64_t> groups;
            for (const Ranked& r : all)
                if (r.points >= least) ++groups[{r.pick.left_cane, r.pick.right_cane, r.pick.left_spur, r.pick.right_spur}];
            const AsGood good = as_good(tables, least, 1'000);
            differ += good.groups != groups.size() || good.shown.size() != groups.size();
            for (const PlanGroup& g : good.shown)
                differ += groups[{g.left_cane, g.right_cane, g.left_spur, g.right_spur}] != g.count;
        }
        CHECK(differ == 0);
        CHECK(without_spur > 50);
        CHECK(empty < 100);
    }

    // a4 lies to the near post alone (2 cut nodes), a6 to the far post (3), a7 to either (1); spurs of 3, 2, 3 and 3 lengths.
    // a4 has the spurs of a5, a6, a7 or none beside it: 2 x (2 + 3 + 3 + 1); a6 3 x (3 + 2 + 3 + 1), a7 2 x (3 + 2 + 3 + 1).
    TEST_CASE("the hand-drawn vine has 63 choices, as counted by hand, each with one cane and at most one spur") {
        const Planning planning(test::single_cane_vine(), house);
        CHECK(planning.counted() == 63);
        for_each_pick(planning.tables().tables, [&](const Pick& p) {
            CHECK((p.left_cane == no_piece) != (p.right_cane == no_piece));
            CHECK((p.left_spur == no_piece || p.right_spur == no_piece));
        });
    }

    TEST_CASE("the sum of the pieces is what the judge says, for every choice of the hand-drawn vine and for many of the others") {
        for (const test::NamedVine& small : single_vines()) {
            const VineTables tables = vine_tables(small.vine, house);
            const test::Judged judged{small.vine, house};
            std::uint64_t seen = 0, asked = 0, differ = 0;
            std::string first;
            for_each_pick(tables.tables, [&](const Pick& pick) {
                if (small.name != "single" && ++seen % 5 != 0) return;
                ++asked;
                if (!test::agrees(tables, judged, pick) && differ++ == 0) first = test::difference(tables, judged, pick);
            });
            CAPTURE(small.name);
            CAPTURE(first);
            CHECK(asked > 0);
            CHECK(differ == 0);
            const auto best = best_by_force(tables.tables);
            CHECK(best_pick(tables.tables) == best);
        }
    }

    TEST_CASE("full size: grown vines have the best plan of nested loops, as the judge sees it, and every findings' share is of 1000") {
        std::uint32_t offered = 0;
        const auto vines = test::sized(2u, 8u);
        for (std::uint32_t seed = 0; seed < vines; ++seed) {
            const Vine vine = grown_single(40 + seed, 4 + static_cast<int>(seed) * 3, seed % 2 ? 1.2 : 1.0);
            CAPTURE(seed);
            const Planning planning(vine, house);
            const auto best = planning.best();
            if (!best) continue;
            ++offered;
            CHECK(best_pick(planning.tables().tables) == best_by_force(planning.tables().tables));
            CHECK(planning.count(best->points) == tally_by_force(planning.tables().tables, best->points.count));
            const auto after = prune(vine, best->plan);
            REQUIRE(after.has_value());
            CHECK_FALSE(check_vine(*after).has_value());
            const test::Judged judged{vine, house};
            const auto judgement = judged(best->plan);
            REQUIRE(judgement.has_value());
            CHECK(judgement->points == best->points);
            CHECK(judgement->points_before_caps == best->sum);
            CHECK(parse_plan(print_plan(best->plan)) == best->plan);
            Tenths shares;
            for (const rules::Finding& f : judgement->findings) shares += f.out_of;
            CHECK(shares == Tenths{1000});
            CHECK(judged(Plan{})->points <= Tenths{50});
            // One cane lies in the end, cut or not by whichever plan.
            int laid = 0;
            for (const Edit& edit : best->plan.edits) laid += std::holds_alternative<Lay>(edit);
            CHECK(laid == 1);
        }
        CHECK(offered == vines);
    }

    TEST_CASE("one cane weighs what two would: its thickness 50 of 1000, the spur's place 60, and no side is asked for more") {
        const Vine vine = test::single_cane_vine();
        const test::Judged judged{vine, house};
        CHECK(judged.asked.single);
        CHECK(judged.asked.canes() == 1);
        CHECK(judged.asked.spurs() == 1);
        CHECK(judged.asked.total() == Tenths{1000});
        // Asked: no suckers stand, so 980 of 1000 are in force: 50 x 1000 / 980 = 51.0, 60 x 1000 / 980 = 61.2.
        CHECK(judged.asked.of_cane(rules::RuleName::cane_diameter, Side::left) == Tenths{51});
        CHECK(judged.asked.of_cane(rules::RuleName::cane_diameter, Side::right) == Tenths{51});
        CHECK(judged.asked.of_spur(rules::RuleName::spur_place, Side::left) == Tenths{61});
    }

    TEST_CASE("a second cane is one too many wherever it goes, and a second spur takes half") {
        const Vine vine = test::single_cane_vine();
        const test::Judged judged{vine, house};
        const std::string one = "mark a6 right; mark a7 spur; cut a2.0+15.0 shears; cut a7.2+20.0 shears; lay a6 right wraps 1; tie a6.5+15.0 tight";
        const auto good = judged(plan_of(one));
        REQUIRE(good.has_value());
        CHECK(finding(*good, rules::RuleName::cane_count)->said.key.name == "rule.cane-count.full");
        CHECK(finding(*good, rules::RuleName::spur_count)->points == finding(*good, rules::RuleName::spur_count)->out_of);
        // The same with a4 laid the other way as well: a2 stays to bear it.
        const auto two = judged(plan_of("mark a6 right; mark a7 spur; cut a5.0+8.0 shears; cut a7.2+20.0 shears; lay a6 right wraps 1; lay a4 left wraps 1; "
                                        "tie a6.5+15.0 tight; tie a4.4+15.0 tight"));
        REQUIRE(two.has_value());
        const rules::Finding* count = finding(*two, rules::RuleName::cane_count);
        CHECK(count->points == Tenths{0});
        CHECK(count->said.key.name == "rule.cane-count.too-many-single");
        CHECK(count->said.measured == 2'000);
        // a5 kept as a spur beside a7.
        const auto spurs = judged(plan_of("mark a6 right; mark a7 spur; mark a5 spur; cut a2.1+10.0 shears; cut a7.2+20.0 shears; lay a6 right wraps 1; tie a6.5+15.0 tight"));
        REQUIRE(spurs.has_value());
        count = finding(*spurs, rules::RuleName::spur_count);
        CHECK(count->said.key.name == "rule.spur-count.too-many-single");
        CHECK(count->points.count == count->out_of.count / 2);
        CHECK(two->points < good->points);
        CHECK(spurs->points < good->points);
    }

    TEST_CASE("nothing kept: said once, towards either post, and held under the hard cap") {
        const Vine vine = test::single_cane_vine();
        const test::Judged judged{vine, house};
        const auto bare = judged(plan_of("cut a2.0+15.0 shears; cut a3.0+10.0 shears"));
        REQUIRE(bare.has_value());
        int counts = 0;
        for (const rules::Finding& f : bare->findings)
            if (f.rule->name == rules::RuleName::cane_diameter || f.rule->name == rules::RuleName::spur_count) {
                ++counts;
                CHECK(f.side == Side::none);
                CHECK(f.points == Tenths{0});
            }
        CHECK(counts == 2);
        int caps = 0;
        for (const rules::Cap& cap : bare->caps) caps += cap.cap == "side-bare";
        CHECK(caps == 1);
    }

    TEST_CASE("the mirrored vine and plan score the same") {
        const Vine vine = test::single_cane_vine(), mirrored = test::mirrored(vine);
        const test::Judged judged{vine, house}, across{mirrored, house};
        const Planning planning(vine, house), other(mirrored, house);
        REQUIRE(planning.best().has_value());
        CHECK(planning.best()->points == other.best()->points);
        CHECK(planning.counted() == other.counted());
        for (const BestPlan& plan : planning.top(60))
            CHECK(across(test::mirrored(plan.plan))->points == plan.points);
    }

    TEST_CASE("2,000 lists of legal edits: none beats the best plan") {
        int judged_plans = 0;
        std::uint64_t seed = 0;
        std::vector<test::NamedVine> vines = single_vines();
        vines.push_back({"grown", grown_single(7, 12, 1.2)});
        for (const test::NamedVine& small : vines) {
            const Planning planning(small.vine, house);
            const test::Judged judged{small.vine, house};
            const auto good = planning.top(40);
            REQUIRE_FALSE(good.empty());
            int beaten = 0;
            std::string first;
            for (int i = 0; i < 150; ++i) {
                const std::uint64_t number = ++seed;
                for (const Plan& plan : {test::random_edits(small.vine, number, between(draw(number, 1, 0), 1, 25)),
                                         test::spoilt(small.vine, good[number % good.size()].plan, number)}) {
                    const auto found = judged(plan);
                    if (!found) continue;
                    ++judged_plans;
                    if (found->points > good.front().points && beaten++ == 0)
                        first = std::to_string(found->points.count) + " beats " + std::to_string(good.front().points.count) + ": " + print_plan(plan);
                }
            }
            CAPTURE(small.name);
            CAPTURE(first);
            CHECK(beaten == 0);
        }
        CHECK(judged_plans > 1'500);
    }

    TEST_CASE("charges add up to the points missed on a single cane too") {
        const Vine vine = test::single_cane_vine();
        const Planning planning(vine, house);
        const test::Judged judged{vine, house};
        for (const char* text : {"mark a4 left; mark a5 spur; cut a3.0+10.0 shears; cut a5.1+20.0 shears; cut a4.4+20.0 shears; lay a4 left wraps 1; tie a4.3+15.0 tight",
                                 "cut a6.0+8.0 shears; lay a7 left wraps 1", "cut a3.0+5.0 shears; cut a2.0+5.0 shears"}) {
            const Plan plan = plan_of(text);
            const auto mine = judged(plan);
            REQUIRE(mine.has_value());
            const Charges all = charges(vine, house, planning, plan, *mine);
            Tenths sum;
            for (const Charge& charge : all.edits) sum += charge.lost;
            if (all.mending) sum += all.mending->lost;
            for (const HandLoss& hand : all.hand) sum += hand.lost;
            CHECK(sum == all.best - all.mine);
        }
    }
}
