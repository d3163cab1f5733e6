// Spur cordons: the exact best row along each arm against plain recursion, on random tables, on a vine drawn by hand and
// on grown ones; every choice carried out and judged; and what the judge says of the usual faults.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/cordon.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_check.h"
#include "tests/support/cordons.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/mirror.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

struct Forced {
    std::optional<CordonRanked> best;
    std::uint64_t counted = 0;
};
Forced by_force(const CordonTables& tables) {
    Forced found;
    for_each_pick(tables, [&](const CordonPick& pick) {
        ++found.counted;
        const CordonRanked now{pick, points_of(tables, pick), sum_of(tables, pick)};
        if (!found.best || ranks_above(now, *found.best)) found.best = now;
    });
    return found;
}

Vine grown_cordon(std::uint32_t seed, int age, double spacing = 1.8) { return test::grown(System::cordon, seed, age, spacing); }

struct Agreement {
    std::uint64_t judged = 0, differ = 0;
    std::string first;
    void look_at(const Vine& vine, const test::Judged& judge, const CordonTables& tables, const CordonPick& pick) {
        const Plan plan = complete(vine, judge.house, choice_of(tables, pick));
        const auto found = judge(plan);
        ++judged;
        if (found && found->points_before_caps.count == sum_of(tables, pick) && found->points.count == points_of(tables, pick))
            return;
        if (differ++ > 0) return;
        first = print_plan(plan) + "\ntable " + std::to_string(sum_of(tables, pick));
        if (!found) return;
        first += " judge " + std::to_string(found->points_before_caps.count);
        for (const rules::Finding& f : found->findings)
            if (f.lost().count > 0)
                first += "\n  " + std::string(f.rule->key()) + " " + f.on + " " + std::to_string(f.points.count) + " of " +
                         std::to_string(f.out_of.count) + " " + std::string(f.said.key.name);
    }
};

CordonPick random_pick(const CordonTables& tables, std::uint64_t seed) {
    std::uint32_t nth = 0;
    CordonPick pick;
    for (std::size_t side = 0; side < 2; ++side) {
        const CordonTables::Arm& arm = tables.arms[side];
        for (std::size_t x = 0; x < arm.canes.size(); ++x) {
            if (between(draw(seed, 8, 0, nth++), 0, 2) == 0 || pick.spurs[side].size() >= static_cast<std::size_t>(arm.asked)) continue;
            const int longest = static_cast<int>(arm.canes[x].worth.size());
            pick.spurs[side].push_back({static_cast<std::uint16_t>(x), static_cast<std::uint16_t>(between(draw(seed, 8, 1, nth++), 1, longest))});
        }
    }
    return pick;
}

const rules::Finding* finding(const rules::Judgement& judgement, rules::RuleName name, Side side, std::string_view on = "") {
    for (const rules::Finding& f : judgement.findings)
        if (f.rule->name == name && f.side == side && (on.empty() || f.on == on)) return &f;
    return nullptr;
}

}  // namespace

TEST_SUITE("planning/cordon") {
    const rules::HouseRules house = test::spur_cordon();

    TEST_CASE("on random tables the search finds what plain recursion finds, ties and caps too, and counts as many") {
        int differ = 0, capped = 0, tied = 0;
        for (std::uint64_t seed = 0; seed < test::sized<std::uint64_t>(600, 6'000); ++seed) {
            const CordonTables tables = test::random_cordon_tables(seed, 1);
            const Forced forced = by_force(tables);
            REQUIRE(forced.best.has_value());
            differ += best_pick(tables) != *forced.best;
            differ += count_choices(tables) != forced.counted;
            differ += !is_choice(tables, forced.best->pick);
            for (const int points : {forced.best->points, forced.best->points - 3, tables.hard_cap, 0}) {
                Tally tally_forced;
                for_each_pick(tables, [&](const CordonPick& pick) {
                    ++tally_forced.counted;
                    tally_forced.better += points_of(tables, pick) > points;
                    tally_forced.equal += points_of(tables, pick) == points;
                });
                differ += tally(tables, points) != tally_forced;
            }
            capped += forced.best->points < forced.best->sum;
            int same = 0;
            for_each_pick(tables, [&](const CordonPick& pick) { same += sum_of(tables, pick) == forced.best->sum; });
            tied += same > 1;
        }
        CHECK(differ == 0);
        CHECK(capped > 20);
        CHECK(tied > 100);
    }

    // Target round(15 x 1.2) = 18 buds, half of it in spurs of two: 5 a side. Good places of the near arm stand at 110, 330
    // and 440 mm, of the far arm at 110, 220 and 440: three of each can be kept 76 mm apart.
    // Near: canes of 3, 3, 3, 2 and 3 lengths, at most three: 1 + 14 + (9 x 6 + 6 x 4) + (27 x 4 + 18 x 6) = 309.
    // Far: four of 3 lengths: 1 + 12 + 9 x 6 + 27 x 4 = 175.
    TEST_CASE("the hand-drawn cordon asks for three spurs a side and has 309 x 175 choices, as counted by hand") {
        const Vine vine = test::cordon_vine();
        const test::Judged judged{vine, house};
        CHECK(judged.asked.cordon);
        CHECK(judged.asked.row == std::array<int, 2>{3, 3});
        CHECK(judged.asked.canes() == 0);
        CHECK(judged.asked.spurs() == 6);
        CHECK(judged.asked.total() == Tenths{1000});
        CHECK(count_choices(cordon_tables(vine, house)) == 309u * 175u);
        // a10 stands one joint of 30 mm and its collar of 4 mm, a9's too, above the node of a9.
        const rules::RowCane* cane = rules::find_in(judged.offers.row[0], AxisId{10});
        REQUIRE(cane);
        CHECK(rules::find_in(judged.offers.row[0], AxisId{11})->along - cane->along == from_mm(220));
        CHECK(cane->climbed == from_mm(64));
        CHECK(cane->above_lowest == from_mm(30));
        CHECK(rules::find_in(judged.offers.row[0], AxisId{9})->above_lowest == Length{});
    }

    TEST_CASE("its best plan is that of all 54,075 choices, and every thirteenth is worth what the judge says of its full plan") {
        const Vine vine = test::cordon_vine();
        const CordonTables tables = cordon_tables(vine, house);
        const Forced forced = by_force(tables);
        CHECK(forced.counted == 54'075);
        CHECK(best_pick(tables) == *forced.best);
        const test::Judged judged{vine, house};
        Agreement agreement;
        std::uint64_t seen = 0;
        const std::uint64_t step = test::sized<std::uint64_t>(13, 1);
        for_each_pick(tables, [&](const CordonPick& pick) {
            if (seen++ % step == 0) agreement.look_at(vine, judged, tables, pick);
        });
        CAPTURE(agreement.first);
        CHECK(agreement.differ == 0);
        const BestCordon best = best_of_cordon(vine, house);
        CHECK(judged(best.plan)->points == best.points);
        CHECK(parse_plan(print_plan(best.plan)) == best.plan);
        CHECK(judged(Plan{})->points <= Tenths{50});
    }

    // Two buds on each of six would be 12 of 18: a third bud costs a spur half a mark and brings the load within a tenth.
    TEST_CASE("of two canes at a place the lower, as many buds as the load needs, and the arms are never cut") {
        const BestCordon best = best_of_cordon(test::cordon_vine(), house);
        CHECK(best.choice == CordonChoice{{{{AxisId{9}, 2}, {AxisId{11}, 3}, {AxisId{13}, 3}}, {{AxisId{17}, 3}, {AxisId{14}, 3}, {AxisId{16}, 3}}}});
        for (const Edit& edit : best.plan.edits) {
            CHECK_FALSE(std::holds_alternative<Lay>(edit));
            if (const auto* cut = std::get_if<Cut>(&edit)) CHECK((axis_of(cut->past).value > 3));
        }
    }

    TEST_CASE("full size: grown cordons of five to thirty winters, sampled choices judged, the best legal, sound and as judged") {
        int formed = 0;
        for (std::uint32_t seed = 0; seed < test::sized(6u, 24u); ++seed) {
            const Vine vine = grown_cordon(300 + seed, 5 + static_cast<int>(seed) * 5 % 26, seed % 2 ? 1.8 : 1.2);
            CAPTURE(seed);
            if (rules::why_not_judged(vine)) continue;
            ++formed;
            const test::Judged judged{vine, house};
            const CordonTables tables = cordon_tables(vine, house);
            Agreement agreement;
            for (std::uint64_t i = 0; i < 60; ++i) agreement.look_at(vine, judged, tables, random_pick(tables, seed * 1'000 + i));
            CAPTURE(agreement.first);
            CHECK(agreement.differ == 0);
            const BestCordon best = best_of_cordon(vine, house);
            const auto after = prune(vine, best.plan);
            REQUIRE(after.has_value());
            CHECK_FALSE(check_vine(*after).has_value());
            const auto judgement = judged(best.plan);
            CHECK(judgement->points == best.points);
            Tenths shares;
            for (const rules::Finding& f : judgement->findings) shares += f.out_of;
            CHECK(shares == Tenths{1000});
            CHECK(judged(Plan{})->points <= Tenths{50});
            int beaten = 0;
            std::string first;
            for (std::uint64_t i = 0; i < 120; ++i)
                for (const Plan& plan : {test::random_edits(vine, seed * 1'000 + i, 12), test::spoilt(vine, best.plan, seed * 1'000 + i)}) {
                    const auto found = judged(plan);
                    if (found && found->points > best.points && beaten++ == 0) first = print_plan(plan);
                }
            CAPTURE(first);
            CHECK(beaten == 0);
        }
        CHECK(formed >= 4);
    }

    TEST_CASE("2,000 spoilt plans of the hand-drawn cordon never beat the best") {
        const Vine vine = test::cordon_vine();
        const test::Judged judged{vine, house};
        const CordonTables tables = cordon_tables(vine, house);
        const BestCordon best = best_of_cordon(vine, house);
        int beaten = 0, tried = 0;
        std::string first;
        for (std::uint64_t i = 0; i < 2'000; ++i) {
            const Plan start = i % 2 ? best.plan : complete(vine, house, choice_of(tables, random_pick(tables, i)));
            const auto found = judged(test::spoilt(vine, start, i));
            tried += found.has_value();
            if (found && found->points > best.points && beaten++ == 0) first = print_plan(test::spoilt(vine, start, i));
        }
        CAPTURE(first);
        CHECK(beaten == 0);
        CHECK(tried > 1'400);
    }

    TEST_CASE("the mirrored cordon has the mirrored row and the same points") {
        const Vine vine = test::cordon_vine(), mirrored = test::mirrored(vine);
        const BestCordon best = best_of_cordon(vine, house), other = best_of_cordon(mirrored, house);
        CHECK(best.points == other.points);
        const auto axes = [](const std::vector<SpurKept>& spurs) {
            std::vector<AxisId> all;
            for (const SpurKept& spur : spurs) all.push_back(spur.axis);
            return all;
        };
        for (const std::size_t side : {0u, 1u}) CHECK(axes(best.choice[side]) == axes(other.choice[1 - side]));
        const test::Judged across{mirrored, house};
        CHECK(across(test::mirrored(best.plan))->points == best.points);
    }

    TEST_CASE("what the judge says: one spur fewer, one too many, the upper cane, a lying spur, a bare arm, an arm's good cane passed by") {
        const Vine vine = test::cordon_vine();
        const test::Judged judged{vine, house};
        const auto choice = [&](std::vector<SpurKept> near, std::vector<SpurKept> far) {
            return judged(complete(vine, house, CordonChoice{{std::move(near), std::move(far)}}));
        };
        const auto few = choice({{AxisId{9}, 2}, {AxisId{13}, 2}}, {{AxisId{17}, 2}, {AxisId{14}, 2}, {AxisId{16}, 2}});
        const rules::Finding* f = finding(*few, rules::RuleName::spur_count, Side::left);
        CHECK(f->said.key.name == "rule.spur-count.row-few");
        CHECK(f->points.count * 3 == f->out_of.count * 2);
        CHECK(finding(*few, rules::RuleName::spur_place, Side::left, "a13")->said.key.name == "rule.spur-place.row-wide");
        // a15 beside a14: one too many of its place.
        const auto many = choice({{AxisId{9}, 2}, {AxisId{11}, 2}, {AxisId{13}, 2}},
                                 {{AxisId{17}, 2}, {AxisId{14}, 2}, {AxisId{15}, 2}, {AxisId{16}, 2}});
        f = finding(*many, rules::RuleName::spur_count, Side::right);
        CHECK(f->said.key.name == "rule.spur-count.row-many");
        CHECK(f->points.count * 3 == f->out_of.count * 2);
        const auto upper = choice({{AxisId{10}, 2}, {AxisId{11}, 2}, {AxisId{13}, 2}},
                                  {{AxisId{17}, 2}, {AxisId{15}, 2}, {AxisId{16}, 2}});
        CHECK(finding(*upper, rules::RuleName::spur_place, Side::left, "a10")->said.key.name == "rule.spur-place.row-lower");
        f = finding(*upper, rules::RuleName::spur_direction, Side::right, "a15");
        CHECK(f->said.key.name == "rule.spur-direction.leaning");  // 1.6 along for 1 up: 58 degrees off upright
        const auto bare = choice({}, {{AxisId{17}, 2}, {AxisId{14}, 2}, {AxisId{16}, 2}});
        REQUIRE(bare->caps.size() == 1);
        CHECK(bare->caps[0].key.name == "cap.arm-bare");
        CHECK(bare->points == Tenths{400});
    }

    TEST_CASE("a cordon without an arm on one side, or with a short one, is refused in words of its own") {
        Vine vine = test::cordon_vine();
        CHECK_FALSE(rules::why_not_judged(vine).has_value());
        vine.spacing = from_mm(1'500);
        CHECK(rules::why_not_judged(vine)->name == "error.judge.short-arm");
        vine.spacing = from_mm(1'200);
        vine.laid.pop_back();
        CHECK(rules::why_not_judged(vine)->name == "error.judge.no-arm");
    }
}
