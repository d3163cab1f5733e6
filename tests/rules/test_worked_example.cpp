// A vine judged on paper, to the tenth: every number of its tables is a check here.
#include <doctest/doctest.h>

#include <string>

#include "sim/rules/judge.h"
#include "sim/rules/piece_points.h"
#include "tests/support/worked_example.h"

using namespace spurwright;
using namespace spurwright::rules;

namespace {

const HouseRules house;

// Points of one rule on one side (Side::none: judged once), summed where it speaks of canes and spurs.
int points(const Judgement& judgement, RuleName rule, Side side, std::string_view on = "") {
    for (const Finding& f : judgement.findings)
        if (f.rule->name == rule && f.side == side && (on.empty() || f.on == on)) return f.points.count;
    return -1;
}

int sum_of(const Judgement& judgement, std::initializer_list<RuleName> rules, Side side, std::string_view on = "") {
    int sum = 0;
    for (const RuleName rule : rules) sum += points(judgement, rule, side, on);
    return sum;
}

Judgement judged(const PlanFacts& plan, bool with_sucker = true) {
    return judge_facts(plan, asked(test::worked_offers(house, with_sucker), house), house);
}

PlanFacts plan_a() { return test::worked_plan({11, 7, 21, 7, 12, 2, 22, 2}, house); }

PlanFacts plan_b() {
    PlanFacts plan = test::worked_plan({13, 6, 21, 7, 12, 3, 0, 0}, house);
    plan.sides[0].cane->end.wood_beyond_bud = from_mm(7);  // its reach stays as the table of the paper has it
    plan.cuts.clear();
    const auto cut = [&](std::uint32_t axis, int age, double diameter, int stub) {
        CutFacts c;
        c.axis = AxisId{axis};
        c.wood_age = age;
        c.diameter = from_mm(diameter);
        c.tool = Tool::shears;
        c.needed = age > 1;
        c.stub = {stub};
        plan.cuts.push_back(c);
    };
    cut(5, 2, 12, 1500);
    cut(6, 2, 17, 300);
    cut(13, 1, 8.6, 0);
    cut(21, 1, 5.6, 0);
    cut(12, 1, 6.7, 0);
    cut(22, 1, 6.2, 0);
    cut(11, 1, 9.3, 0);
    plan.suckers.left = {AxisId{31}};
    plan.suckers.removed = 0;
    return plan;
}

using enum RuleName;

TEST_SUITE("rules/worked-example") {
    TEST_CASE("asked: both canes, both spurs, suckers and old wood, 1000 in all") {
        const Offers offers = test::worked_offers(house);
        CHECK(offers.sides[0].canes == std::vector{AxisId{11}, AxisId{12}});  // a13 stands too far out
        CHECK(offers.sides[1].canes == std::vector{AxisId{21}});              // a22 is too thin to lay
        CHECK(offers.sides[1].spurs == std::vector{AxisId{21}, AxisId{22}});
        const Asked asks = asked(offers, house);
        CHECK(asks.cane == std::array{true, true});
        CHECK(asks.spur == std::array{true, true});
        CHECK(asks.total() == Tenths{1000});
        int cane = 0, spur = 0, once = 0;
        for (std::size_t i = 0; i < rule_count; ++i) {
            cane += asks.per_cane[i].count;
            spur += asks.per_spur[i].count;
            once += asks.once[i].count;
        }
        CHECK(cane == 253);
        CHECK(spur == 112);
        CHECK(once == 270);
    }
    TEST_CASE("plan A: 98.6, each finding as in its table") {
        const Judgement j = judged(plan_a());
        CHECK(points(j, cane_diameter, Side::left) == 25);
        CHECK(points(j, cane_diameter, Side::right) == 18);
        CHECK(points(j, cane_end_diameter, Side::left) == 10);
        CHECK(points(j, cane_end_diameter, Side::right) == 6);
        for (const Side side : both_sides) {
            CHECK(points(j, internode_length, side) == 20);
            CHECK(points(j, origin_distance, side) == 40);
            CHECK(points(j, origin_height, side) == 20);
            CHECK(points(j, cane_side, side) == 20);
            CHECK(points(j, wood_age, side) == 15);
            CHECK(points(j, cane_health, side) == 25);
            CHECK(points(j, cane_reach, side) == 30);
            CHECK(points(j, cane_count, side) + points(j, end_cut, side) + points(j, tying, side) == 48);
            CHECK(points(j, spur_count, side) == 30);
            CHECK(points(j, spur_buds, side) == 25);
            CHECK(points(j, spur_place, side) == 30);
        }
        CHECK(points(j, spur_size, Side::left) == 15);
        CHECK(points(j, spur_size, Side::right) == 12);
        CHECK(points(j, end_cut, Side::left, "a12") == 12);
        CHECK(points(j, end_cut, Side::right, "a22") == 12);
        CHECK(points(j, bud_load, Side::none) == 100);
        CHECK(sum_of(j, {old_wood_stub, wound_size, tool_choice, wood_left_behind, suckers}, Side::none) == 170);
        CHECK(j.points_before_caps == Tenths{986});
        CHECK(j.points == Tenths{986});
        CHECK(j.caps.empty());
    }
    TEST_CASE("plan A: 490 and 472 mm of reach leave 220 and 256 mm of free wire, and the load is on target") {
        const PlanFacts plan = plan_a();
        CHECK(plan.sides[0].cane->reach == from_mm(490));
        CHECK(plan.sides[0].cane->free_wire == from_mm(220));
        CHECK(plan.sides[1].cane->reach == from_mm(472));
        CHECK(plan.sides[1].cane->free_wire == from_mm(256));
        CHECK(plan.load.all == 18);
        CHECK(target_buds(house, test::worked_spacing) == 18);
    }
    TEST_CASE("plan B: 72.7, far cane, overlap, three-bud spur, flush cut, sucker left") {
        const Judgement j = judged(plan_b());
        CHECK(points(j, cane_diameter, Side::left) == 25);
        CHECK(points(j, cane_end_diameter, Side::left) == 10);
        CHECK(points(j, internode_length, Side::left) == 20);
        CHECK(points(j, origin_distance, Side::left) == 0);
        CHECK(points(j, origin_height, Side::left) == 16);
        CHECK(sum_of(j, {cane_side, wood_age, cane_health}, Side::left) == 60);
        CHECK(plan_b().sides[0].cane->reach == from_mm(639));
        CHECK(plan_b().sides[0].cane->free_wire == from_mm(-78));
        CHECK(points(j, cane_reach, Side::left) == 0);
        CHECK(points(j, cane_count, Side::left) == 20);
        CHECK(points(j, end_cut, Side::left, "a13") == 5);
        CHECK(points(j, tying, Side::left) == 15);
        CHECK(points(j, cane_reach, Side::right) == 30);  // short load, but no ripe wood for more was there
        CHECK(points(j, spur_count, Side::left) == 30);
        CHECK(points(j, spur_buds, Side::left) == 12);
        CHECK(points(j, spur_place, Side::left) == 30);
        CHECK(points(j, spur_size, Side::left) == 15);
        CHECK(points(j, end_cut, Side::left, "a12") == 12);
        CHECK(sum_of(j, {spur_count, spur_buds, spur_place, spur_size}, Side::right) == 0);
        CHECK(points(j, bud_load, Side::none) == 88);
        CHECK(points(j, old_wood_stub, Side::none) == 20);
        CHECK(points(j, wound_size, Side::none) == 30);
        CHECK(points(j, tool_choice, Side::none) == 27);
        CHECK(points(j, wood_left_behind, Side::none) == 50);
        CHECK(points(j, suckers, Side::none) == 0);
        CHECK(j.points == Tenths{727});
        CHECK(j.caps.empty());
    }
    TEST_CASE("plan B: what to mend now, and what next winter") {
        const Judgement j = judged(plan_b());
        for (const Finding& f : j.findings) {
            CAPTURE(f.said.key.name);
            if (f.lost().count == 0) {
                CHECK(f.mend == Mend::nothing);
                continue;
            }
            const bool now = f.rule->name == cane_reach || f.rule->name == suckers || f.rule->name == tool_choice ||
                             f.rule->name == cane_end_diameter || (f.rule->name == spur_buds && f.side == Side::left);
            const bool carried = f.rule->name == end_cut && f.on == "a13";
            if (f.rule->name == old_wood_stub)
                CHECK(f.mend == Mend::carried);
            else
                CHECK(f.mend == (now ? Mend::now : carried ? Mend::carried : Mend::next_winter));
        }
    }
    TEST_CASE("plan C: last winter's cane left on costs 70 tenths and holds the total at 60") {
        PlanFacts plan = plan_a();
        plan.cuts.erase(plan.cuts.begin() + 1);
        plan.clearing.old_cuts_not_made = 1;
        plan.clearing.pieces_left = {AxisId{6}};
        plan.clearing.old_canes_left = {AxisId{6}};
        const Judgement j = judged(plan);
        CHECK(points(j, wood_left_behind, Side::none) == 0);
        CHECK(points(j, old_wood_stub, Side::none) == 20);
        CHECK(j.points_before_caps == Tenths{916});
        CHECK(j.points == Tenths{600});
        REQUIRE(j.caps.size() == 1);
        CHECK(j.caps[0].cap == "old-cane-left");
    }
    TEST_CASE("plan D: nothing done earns nothing") {
        PlanFacts plan;
        plan.load = {0, 0, 42, test::worked_spacing};
        plan.clearing = {false,
                         2,
                         2,
                         true,
                         {AxisId{5}, AxisId{6}, AxisId{11}, AxisId{12}, AxisId{13}, AxisId{21}, AxisId{22}},
                         {AxisId{5}, AxisId{6}},
                         60,
                         0};
        plan.suckers.left = {AxisId{31}};
        const Judgement j = judged(plan);
        CHECK(j.points_before_caps == Tenths{0});
        for (const Finding& f : j.findings) CHECK(f.points == Tenths{0});
    }
    TEST_CASE("without the trunk shoot suckers are not asked and plan A still earns 98.6") {
        const Asked asks = asked(test::worked_offers(house, false), house);
        CHECK(asks.total() == Tenths{1000});
        struct Share {
            RuleName rule;
            int cane;
        };
        for (const Share& s : {Share{cane_diameter, 26},
                               {cane_end_diameter, 10},
                               {internode_length, 20},
                               {origin_distance, 41},
                               {origin_height, 20},
                               {cane_side, 20},
                               {wood_age, 15},
                               {cane_health, 26},
                               {cane_reach, 31},
                               {cane_count, 20},
                               {end_cut, 13},
                               {tying, 15}})
            CHECK(asks.per_cane[index_of(s.rule)] == Tenths{s.cane});
        for (const Share& s :
             {Share{spur_count, 31}, {spur_buds, 26}, {spur_place, 31}, {spur_size, 15}, {end_cut, 12}})
            CHECK(asks.per_spur[index_of(s.rule)] == Tenths{s.cane});
        for (const Share& s : {Share{bud_load, 102},
                               {old_wood_stub, 41},
                               {wound_size, 31},
                               {tool_choice, 31},
                               {wood_left_behind, 51},
                               {suckers, 0}})
            CHECK(asks.once[index_of(s.rule)] == Tenths{s.cane});
        const Judgement j = judged(plan_a(), false);
        int left = 0, right = 0, once = 0;
        for (const Finding& f : j.findings)
            (f.side == Side::left ? left : f.side == Side::right ? right : once) += f.points.count;
        CHECK(left == 257 + 115);
        CHECK(right == 246 + 112);
        CHECK(once == 256);
        CHECK(j.points == Tenths{986});
    }
    TEST_CASE("the best of its 17908 plans earns 99.0 by the search's own sums") {
        const Asked asks = asked(test::worked_offers(house), house);
        const test::WorkedChoice best{11, 8, 21, 5, 12, 2, 22, 2};
        const PlanFacts plan = test::worked_plan(best, house);
        const int target = target_buds(house, plan.load.spacing);
        const bool is_short = short_load(plan.load.counted(), target, house);
        Tenths sum = pair_points(plan.pair(), asks) + load_points(plan.load, house, asks) + canonical_points(asks);
        for (const SidePieces& side : plan.sides)
            sum += cane_points(*side.cane, house, asks, is_short) + spur_points(*side.spur, house, asks) +
                   place_points({{side.spur->below_wire, side.spur->distance_to_head},
                                 SpurPlaceFacts::Base{side.cane->below_wire, side.cane->distance_to_head}},
                                side.spur->side, house, asks);
        CHECK(sum == Tenths{990});
        CHECK(judged(plan).points == Tenths{990});
    }
}

}  // namespace
