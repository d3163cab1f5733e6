// The judge on drawn and grown vines: what it reads from the tables before and after.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "sim/pruning/plan_text.h"
#include "sim/rules/clearing.h"
#include "sim/rules/judge.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/rule_list.h"
#include "sim/vine/vine_builder.h"
#include "tests/support/little_vine.h"
#include "tests/support/mirror.h"
#include "tests/support/random_edits.h"

using namespace spurwright;
using namespace spurwright::rules;
using namespace spurwright::literals;

namespace {

const HouseRules house;

Vine pruned(const Vine& vine, std::string_view text) {
    const auto plan = parse_plan(text);
    REQUIRE(plan);
    auto after = prune(vine, *plan);
    REQUIRE(after);
    return *std::move(after);
}

Judgement judged(const Vine& vine, std::string_view text) { return judge(vine, pruned(vine, text), house); }

PlanFacts facts_of(const Vine& vine, std::string_view text) {
    return measure_plan(vine, pruned(vine, text), house, offers(vine, house));
}

const Finding* find(const Judgement& judgement, RuleName rule, Side side = Side::none) {
    for (const auto* list : {&judgement.findings, &judgement.remarks})
        for (const Finding& f : *list)
            if (f.rule->name == rule && f.side == side) return &f;
    return nullptr;
}

bool has_cap(const Judgement& judgement, std::string_view cap) {
    for (const Cap& c : judgement.caps)
        if (c.cap == cap) return true;
    return false;
}

// The little vine with its canes leaning along the row, so that they can be laid and tied as careful hands would.
Vine leaning_vine() {
    Vine vine = test::little_vine();
    for (const std::uint32_t id : {4u, 5u, 7u}) {
        const Axis& axis = *vine.find(AxisId{id});
        const Place crown = vine.nodes[axis.first_node].place;
        Length along;
        for (std::uint32_t i = 1; i < axis.node_count; ++i) {
            Node& node = vine.nodes[axis.first_node + i];
            along += node.joint;
            const std::int32_t out = along.count * 96 / 100, up = along.count * 28 / 100;
            node.place = {{crown.x.count + (id == 7 ? out : -out)}, {crown.y.count + up}, crown.z};
        }
    }
    return vine;
}

constexpr std::string_view careful =
    "mark a4 left; mark a7 right; mark a6 spur; cut a2.1+18.0 shears; cut a6.2+20.0 shears; cut a4.5+20.0 shears; "
    "cut a7.4+20.0 shears; lay a4 left wraps 1; lay a7 right wraps 1; tie a4.4+15.0 tight; tie a7.3+15.0 tight";

TEST_SUITE("rules/measure") {
    const Vine vine = leaning_vine();

    TEST_CASE("facts of a cane, counted by hand on the little vine") {
        const Axis& axis = *vine.find(AxisId{4});
        const CaneFacts cane = measure_cane(vine, house, axis, Side::left, course_of(vine, axis, Side::left), 5);
        CHECK(cane.count_buds == 5);
        CHECK(cane.diameter == Length{8'450});
        CHECK(cane.axis_ratio == PerMille{1060});  // (8.8 + 8.6) / (8.3 + 8.1)
        CHECK(cane.mean_joint == Length{66'250});
        CHECK(cane.joint_variation == PerMille{62});  // 60, 70, 70, 65: 4.15 / 66.25
        CHECK(cane.end_diameter == Length{7'750});
        CHECK(cane.distance_to_head == 94.0_mm);
        CHECK(cane.creep == 94.0_mm);
        CHECK(cane.below_wire == 14.0_mm);
        CHECK(cane.off_row.count == 0);
        CHECK(cane.over_the_head == -62.0_mm);
        CHECK_FALSE(cane.more_ripe_wood);  // its last bud is the last ripe one
        CHECK(cane.end.wood_beyond_bud == 20.0_mm);
        CHECK(cane.health.ripe_share == whole);
        CHECK(cane.free_wire == Length{1'800'000 - 850'000} - cane.reach);
        CHECK(in_mm(cane.reach) == doctest::Approx(62 + 325).epsilon(0.05));  // its base, and most of its 325 mm
    }
    TEST_CASE("laid to the other side it points the other way and stands over on it") {
        const Axis& axis = *vine.find(AxisId{4});
        const CaneFacts cane = measure_cane(vine, house, axis, Side::right, course_of(vine, axis, Side::right), 5);
        CHECK(cane.off_row == 180.0_deg);
        CHECK(cane.over_the_head == 62.0_mm);
        CHECK(cane.reach < 325.0_mm);
    }
    TEST_CASE("an end in a short joint stops short of the next node, in a very short one goes through it") {
        const Axis& axis = *vine.find(AxisId{7});
        CHECK(canonical_end(vine, axis, 2) == PieceEnd{2, 20.0_mm, true});
        Vine close = vine;
        close.nodes[axis.first_node + 3].joint = 24.97_mm;
        CHECK(canonical_end(close, axis, 2) == PieceEnd{2, 19.9_mm, true});
        close.nodes[axis.first_node + 3].joint = 14.96_mm;
        CHECK(canonical_end(close, axis, 2) == PieceEnd{2, 14.9_mm, true});
        Vine blunt = vine;  // 46 mm of ripe wood run on beyond the last node; then 8
        Axis& ends = blunt.axes[row_of(vine, axis)];
        CHECK(canonical_end(blunt, ends, 4) == PieceEnd{4, 20.0_mm, true});
        ends.ripe = 252.0_mm;
        CHECK(canonical_end(blunt, ends, 4) == PieceEnd{4, 8.0_mm, false});
    }
    TEST_CASE("free wire: to the neighbour's end; alone, twice what is left of the own half; run on where the house "
              "lets it") {
        CHECK(free_wire_of(vine, house, Side::left, 700.0_mm) == 250.0_mm);
        Vine alone = vine;
        alone.neighbours[0].kind = NeighbourKind::none;
        alone.neighbours[1].kind = NeighbourKind::end_post;
        CHECK(free_wire_of(alone, house, Side::left, 700.0_mm) == 400.0_mm);
        CHECK(free_wire_of(alone, house, Side::left, 950.0_mm) == -100.0_mm);
        HouseRules run;
        run.cane_reach.no_neighbour = NoNeighbour::run_on;
        CHECK(free_wire_of(alone, run, Side::left, 950.0_mm) == Length{2 * 1'750'000});
        CHECK(free_wire_of(alone, run, Side::right, 950.0_mm) == -100.0_mm);  // there is a post
    }
    TEST_CASE("cutting nearer the last bud gains a cane no room") {
        const Axis& axis = *vine.find(AxisId{4});
        const Course course = course_of(vine, axis, Side::left);
        const CaneFacts usual = measure_cane(vine, house, axis, Side::left, course, 5);
        const CaneFacts near = measure_cane(vine, house, axis, Side::left, course, {5, 10.0_mm, true}, {});
        CHECK_FALSE(usual.usual_free_wire);
        CHECK(near.reach < usual.reach);
        CHECK(near.usual_free_wire == usual.free_wire);
    }
    TEST_CASE("buds beyond the ripe wood are no count buds of a cane") {
        Vine green = vine;
        green.axes[row_of(vine, *vine.find(AxisId{4}))].ripe = 250.0_mm;  // 240 of its 305 mm bear four buds
        const Axis& axis = *green.find(AxisId{4});
        const CaneFacts cane =
            measure_cane(green, house, axis, Side::left, course_of(green, axis, Side::left), {5, {}, true}, {});
        CHECK(cane.count_buds == 4);
        CHECK(cane.health.ripe_share == PerMille{819});
    }
    TEST_CASE("which cuts the pieces kept ask for in old wood, as in the sketch of the little vine") {
        const std::array both{AxisId{4}, AxisId{7}, AxisId{6}};
        CHECK(due_old_wood_cuts(vine, house, both) == std::vector{DueCut{AxisId{2}, node_id(AxisId{2}, 1), 18.0_mm}});
        const std::array right{AxisId{7}, AxisId{6}};
        CHECK(due_old_wood_cuts(vine, house, right) == std::vector{DueCut{AxisId{2}, node_id(AxisId{2}, 0), 15.5_mm}});
        const std::array outer{AxisId{5}, AxisId{7}};
        CHECK(due_old_wood_cuts(vine, house, outer).empty());
        CHECK(due_old_wood_cuts(vine, house, {}).size() == 2);
    }
    TEST_CASE("a cane with a spot on its fifth node may still be kept to its fourth") {
        Vine spotted = vine;
        spotted.nodes[spotted.find(AxisId{4})->first_node + 5].harm = Harm::spot;
        CHECK(offers(spotted, house).sides[0].canes == std::vector{AxisId{4}});
        spotted.nodes[spotted.find(AxisId{4})->first_node + 4].harm = Harm::spot;
        CHECK(offers(spotted, house).sides[0].canes.empty());
    }
}

TEST_SUITE("rules/judge") {
    const Vine vine = leaning_vine();

    TEST_CASE("the careful plan: each piece is read as what it was meant to be") {
        const PlanFacts plan = facts_of(vine, careful);
        REQUIRE(plan.sides[0].cane);
        REQUIRE(plan.sides[1].cane);
        CHECK(plan.sides[0].cane->axis == AxisId{4});
        CHECK(plan.sides[1].cane->axis == AxisId{7});
        CHECK_FALSE(plan.sides[0].spur);
        REQUIRE(plan.sides[1].spur);
        CHECK(plan.sides[1].spur->axis == AxisId{6});
        CHECK(plan.load == LoadFacts{9, 2, 11, {1'800'000}});
        CHECK(plan.clearing.pieces_left.empty());
        CHECK(plan.clearing.old_cuts_not_made == 0);
        CHECK(plan.cuts.size() == 4);
        CHECK(plan.cuts[0].needed);
        CHECK(plan.cuts[0].stub == PerMille{1538});  // 18 / 11.7
        CHECK(plan.clearing.one_year_nodes == 16);
        CHECK(plan.clearing.one_year_nodes_removed == 5);
    }
    TEST_CASE("the careful plan: facts before and after agree with those of the uncut vine, and so do the points") {
        const PlanFacts plan = facts_of(vine, careful);
        const auto laid = [&](int axis, Side side, std::uint32_t node) {
            const Axis& cane = *vine.find(AxisId{static_cast<std::uint32_t>(axis)});
            return measure_cane(vine, house, cane, side, course_of(vine, cane, side), node);
        };
        CHECK(*plan.sides[0].cane == laid(4, Side::left, 5));
        CHECK(*plan.sides[1].cane == laid(7, Side::right, 4));
        CHECK(*plan.sides[1].spur == measure_spur(vine, house, *vine.find(AxisId{6}), 2));
        const Asked asks = asked(vine, house);
        const bool is_short = short_load(plan.load.counted(), target_buds(house, vine.spacing), house);
        Tenths sum = pair_points(plan.pair(), asks) + load_points(plan.load, house, asks) + canonical_points(asks);
        for (const SidePieces& side : plan.sides) {
            sum += cane_points(*side.cane, house, asks, is_short);
            if (side.spur)
                sum += spur_points(*side.spur, house, asks) +
                       place_points(place_of(*side.spur, &*side.cane), side.spur->side, house, asks);
        }
        const Judgement judgement = judged(vine, careful);
        CHECK(judgement.points_before_caps == sum);
        CHECK(judgement.caps.empty());
    }
    TEST_CASE("the sum of the findings is the total, their weights are 1000, and each says its source and its step") {
        for (const std::string_view text :
             {careful, std::string_view("cut a2.0+15.5 shears"), std::string_view("lay a2 left wraps 0")}) {
            const Judgement judgement = judged(vine, text);
            Tenths sum, out_of;
            for (const Finding& f : judgement.findings) {
                CAPTURE(std::string(f.rule->key()));
                sum += f.points;
                out_of += f.out_of;
                CHECK(f.points.count >= 0);
                CHECK(f.points <= f.out_of);
                CHECK_FALSE(f.said.key.name.empty());
                CHECK((f.lost().count > 0) == (f.mend != Mend::nothing));
                CHECK(f.step == f.rule->step);
            }
            CHECK(sum == judgement.points_before_caps);
            CHECK(out_of == Tenths{1000});
            for (const Finding& f : judgement.remarks) CHECK(f.is_remark());
        }
    }
    TEST_CASE("nothing done earns nothing, on the little vine too, where a short cane stands like a spur") {
        const Judgement judgement = judged(vine, "");
        CHECK(judgement.points_before_caps == Tenths{0});
        CHECK(has_cap(judgement, "old-cane-left"));
        CHECK(judged(vine, "mark a4 left; mark a7 right; mark a6 spur").points_before_caps == Tenths{0});
    }
    TEST_CASE("a cane marked but not laid is said to be just that") {
        const Judgement judgement = judged(vine, "mark a4 left; cut a5.0+8.0 shears");
        CHECK(find(judgement, RuleName::cane_count, Side::left)->said.key.name == "rule.cane-count.not-laid");
        CHECK(find(judgement, RuleName::cane_count, Side::right)->said.key.name == "rule.cane-count.none");
    }
    TEST_CASE("old wood laid: no mark for that cane, and held at 40") {
        const Judgement judgement = judged(vine, "lay a2 left wraps 0");
        CHECK(find(judgement, RuleName::wood_age, Side::left)->said.key.name == "rule.wood-age.old");
        CHECK(find(judgement, RuleName::cane_diameter, Side::left)->points == Tenths{0});
        CHECK(has_cap(judgement, "two-year-laid"));
        CHECK(judgement.points <= Tenths{400});
    }
    TEST_CASE("a cut trunk is held at 40; a bare side too") {
        const Judgement judgement = judged(vine, "cut a1.1+100.0 saw");
        CHECK(has_cap(judgement, "trunk-cut"));
        CHECK(has_cap(judgement, "side-bare"));
        CHECK(find(judgement, RuleName::wound_size)->points == Tenths{0});
    }
    TEST_CASE("a flush cut, a cut left out and a long stub in old wood") {
        const auto stub = [&](std::string_view text) {
            return find(judged(vine, text), RuleName::old_wood_stub)->said.key.name;
        };
        CHECK(stub("lay a4 left wraps 1; cut a2.1+1.0 shears") == "rule.old-wood-stub.flush");
        CHECK(stub("lay a4 left wraps 1; cut a2.1+60.0 shears") == "rule.old-wood-stub.very-long");
        CHECK(stub("lay a4 left wraps 1; cut a5.0+8.0 shears") == "rule.old-wood-stub.not-made");
        CHECK(stub("lay a5 left wraps 1; cut a7.4+20.0 shears; lay a7 right wraps 1") == "rule.old-wood-stub.none-due");
    }
    TEST_CASE("an unneeded cut through the arm next to a needed one") {
        const PlanFacts plan =
            facts_of(vine, "lay a4 left wraps 1; cut a4.5+20.0 shears; cut a3.0+10.0 shears; cut a2.1+18.0 shears");
        REQUIRE(plan.cuts.size() == 3);
        CHECK(plan.cuts[1].needed);  // nothing of a3 was kept
        CHECK(plan.cuts[2].needed);
        const PlanFacts other = facts_of(vine, "lay a7 right wraps 1; cut a3.2+10.0 shears; cut a2.0+15.5 shears");
        CHECK_FALSE(other.cuts[0].needed);
    }
    TEST_CASE("the end tie, a tie over a bud, a tight tie elsewhere") {
        const auto tied = [&](std::string_view ties) {
            return facts_of(vine, "cut a4.5+20.0 shears; cut a2.1+18.0 shears; lay a4 left wraps 1" + std::string(ties))
                .sides[0]
                .cane->tying;
        };
        using EndTie = TyingFacts::EndTie;
        CHECK(tied("").end_tie == EndTie::none);
        CHECK(tied("; tie a4.4+15.0").end_tie == EndTie::loose);
        CHECK(tied("; tie a4.4+15.0 tight").end_tie == EndTie::tight);
        CHECK(tied("; tie a4.4+2.0 tight").ties_over_buds == 1);
        CHECK(tied("; tie a4.4+62.0 tight").ties_over_buds == 1);
        CHECK(tied("; tie a4.1+15.0 tight; tie a4.4+15.0 tight").tight_elsewhere == 1);
    }
    TEST_CASE(
        "a spur's tape on a cane that was not cut is said to be just that; a stub without a count bud is no spur") {
        CHECK(facts_of(vine, "mark a7 spur; cut a2.1+18.0 shears").sides[1].spur_not_cut == AxisId{7});
        const PlanFacts bare =
            facts_of(vine, "mark a6 spur; cut a6.0+10.0 shears; cut a7.4+20.0 shears; lay a7 right wraps 1");
        CHECK_FALSE(bare.sides[1].spur);
        CHECK(bare.sides[1].bare_stub == AxisId{6});
    }
    TEST_CASE("of two spurs on a side the one nearest the head is meant, the other is one too many") {
        const PlanFacts plan = facts_of(vine, "cut a6.2+20.0 shears; cut a7.2+20.0 shears; cut a2.1+18.0 shears");
        REQUIRE(plan.sides[1].spur);
        CHECK(plan.sides[1].spur->axis == AxisId{6});
        CHECK(plan.sides[1].more_spurs == std::vector{AxisId{7}});
        CHECK(plan.load.counted() == 2);
        CHECK(plan.load.all == 2 + 2 + 5);                           // a4 still stands
        CHECK(plan.clearing.pieces_left == std::vector{AxisId{4}});  // a5 went with the end of a2
    }
    TEST_CASE("one more act that mends a fault never lowers the total") {
        const Plan whole = *parse_plan(careful);
        for (std::size_t without = 0; without < whole.edits.size(); ++without) {
            Plan plan = whole;
            plan.edits.erase(plan.edits.begin() + static_cast<std::ptrdiff_t>(without));
            const auto after = prune(vine, plan);
            REQUIRE(after);
            const Judgement before = judge(vine, *after, house);
            CAPTURE(without);
            CHECK(before.points_before_caps <= judged(vine, careful).points_before_caps);
            CHECK(before.points <= judged(vine, careful).points);
        }
    }
    TEST_CASE("the mirror image of vine and plan earns the same, for whatever hands may do") {
        const Vine mirror = test::mirrored(vine);
        REQUIRE(judged(mirror, "").points_before_caps == judged(vine, "").points_before_caps);
        for (std::uint64_t seed = 0; seed < 300; ++seed) {
            const Plan plan = test::random_edits(vine, seed, 8);
            const auto one = prune(vine, plan);
            const auto other = prune(mirror, test::mirrored(plan));
            REQUIRE(one);
            REQUIRE(other);
            CAPTURE(print_plan(plan));
            const Judgement here = judge(vine, *one, house), there = judge(mirror, *other, house);
            CHECK(here.points_before_caps == there.points_before_caps);
            CHECK(here.points == there.points);
            CHECK(here.findings.size() == there.findings.size());
        }
    }
    TEST_CASE("every text the judge names, for whatever hands may do, is in both base word files") {
        std::set<std::string_view> keys;
        for (const Vine& v : {vine, test::little_vine()})
            for (std::uint64_t seed = 0; seed < 300; ++seed) {
                const auto after = prune(v, test::random_edits(v, seed, 9));
                REQUIRE(after);
                const Judgement judgement = judge(v, *after, house);
                for (const auto* list : {&judgement.findings, &judgement.remarks})
                    for (const Finding& f : *list) keys.insert(f.said.key.name);
                for (const Cap& cap : judgement.caps) keys.insert(cap.key.name);
            }
        for (const Rule* rule : all_rules) {
            keys.insert(rule->asks.name);
            if (rule->per != Per::vine) keys.insert(rule->missing.name);
        }
        CHECK(keys.size() > 80);
        for (const std::string language : {"en", "es"}) {
            std::ifstream file(std::string(SPURWRIGHT_SOURCE) + "/assets/words/" + language + ".json");
            const std::string words{std::istreambuf_iterator<char>(file), {}};
            for (const std::string_view key : keys) {
                CAPTURE(language);
                CAPTURE(std::string(key));
                const std::string plain = "\"" + std::string(key) + "\":",
                                  plural = "\"" + std::string(key) + ".other\":";
                CHECK((words.find(plain) != std::string::npos || words.find(plural) != std::string::npos));
            }
        }
    }
    TEST_CASE("only vines of two canes are judged yet") {
        CHECK_FALSE(why_not_judged(vine));
        Vine cordon = vine;
        cordon.system = System::cordon;
        CHECK(why_not_judged(cordon));
    }
}

}  // namespace
