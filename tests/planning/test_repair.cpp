// What now? Three accidents drawn by hand; after each the best plan from here is that of every way still open, finished
// and judged one by one. And a side without an acceptable cane, which is nobody's accident.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/charges.h"
#include "sim/planning/open_choices.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/judged.h"
#include "tests/support/little_vine.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

struct Mended {
    Choice choice;      // the best that is still open
    Plan rest;          // what is left to do for it
    Tenths points;      // of everything done, as judged
    Tenths best;        // of the uncut vine
    std::size_t open = 0;
    Tenths most_by_force;  // of every way still open, each finished and judged
    rules::Judgement judgement;
    Charges charges;
};

Plan together(Plan plan, const Plan& rest) {
    plan.edits.insert(plan.edits.end(), rest.edits.begin(), rest.edits.end());
    return plan;
}

Mended mended(const Vine& vine, const std::string& accident) {
    const auto done = parse_plan(accident);
    REQUIRE(done.has_value());
    const auto now = prune(vine, *done);
    REQUIRE(now.has_value());
    const Planning planning(vine, house);
    const Tables open = open_choices(planning.tables(), *now);
    const auto found = best_pick(open);
    REQUIRE(found.has_value());
    CHECK(found == best_by_force(open));
    const test::Judged judged{vine, house};
    Mended all;
    all.choice = choice_of(planning.tables(), found->pick);
    all.rest = finish(vine, *now, house, all.choice);
    all.judgement = *judged(together(*done, all.rest));
    all.points = all.judgement.points;
    all.best = planning.best()->points;
    all.charges = charges(vine, house, planning, together(*done, all.rest), all.judgement);
    for_each_pick(open, [&](const Pick& pick) {
        const auto here = judged(together(*done, finish(vine, *now, house, choice_of(planning.tables(), pick))));
        REQUIRE(here.has_value());
        all.most_by_force = std::max(all.most_by_force, here->points);
        ++all.open;
    });
    return all;
}

}  // namespace

TEST_SUITE("planning/repair") {
    //     |a5      |a4      |a6  |a7        a5 stands upright above the wire, 10 mm thick: pulled down to the near post it
    //   ==o========|========|====|===       snaps. a4, lower on the same arm, still lies there.
    //      `---a2--o       a3    o
    TEST_CASE("a snapped cane: the other cane of its side is laid, and the broken one comes off") {
        const Vine vine = test::little_vine();
        const Mended all = mended(vine, "mark a5 left; mark a7 right; lay a5 left wraps 1");
        CHECK(all.open > 20);
        CHECK(all.points == all.most_by_force);
        REQUIRE(all.choice.left_cane);
        CHECK(axis_of(all.choice.left_cane) == AxisId{4});
        CHECK(all.choice.left_spur != AxisId{5});
        const auto after = prune(vine, together(*parse_plan("mark a5 left; mark a7 right; lay a5 left wraps 1"), all.rest));
        CHECK(after->find(AxisId{5})->removed);  // it went with the end of last year's cane
        // A well-mended accident is as good as none: a4 was to lie there anyway, and no spur can be made of a5.
        CHECK(all.points == all.best);
        CHECK(all.charges.edits.empty());
    }

    //    a2 \ | a3 / a4     a4, the far side's only good cane, is cut off: what is left stands on the near side or is too short.
    //        head  `a5-a6
    TEST_CASE("the wrong cane cut: the best of what still stands, and the loss is that cut's") {
        const Vine vine = test::young_vine();
        const Planning planning(vine, house);
        REQUIRE(axis_of(planning.best()->choice.right_cane) == AxisId{4});
        const Mended all = mended(vine, "cut a4.0+8.0 shears");
        CHECK(all.points == all.most_by_force);
        CHECK(all.points < all.best);
        int laid = 0;
        for (const NodeId cane : {all.choice.left_cane, all.choice.right_cane}) {
            laid += bool(cane);
            if (cane) CHECK((axis_of(cane) == AxisId{2} || axis_of(cane) == AxisId{3}));
        }
        CHECK(laid >= 1);
        REQUIRE_FALSE(all.charges.edits.empty());
        CHECK(all.charges.edits[0].on == AxisId{4});
        CHECK(all.charges.edits[0].missed == AxisId{4});
        CHECK(all.charges.edits[0].step == rules::Step::choose);
        for (const rules::Cap& cap : all.judgement.caps) CHECK(cap.cap != "trunk-sucker-laid");
    }

    //     |a4      |a6  |a7     a6, the far side's only spur beside a7, is cut off, and a7 lies already: no spur is left there.
    //   --o--------'----|--
    TEST_CASE("no spur left: the plan from here leaves that side without one and loses what one spur weighs, no more") {
        const Vine vine = test::little_vine();
        const Mended all = mended(vine, "mark a7 right; cut a6.0+8.0 shears; cut a7.4+20.0 shears; lay a7 right wraps 1");
        CHECK(all.points == all.most_by_force);
        CHECK_FALSE(all.choice.right_spur);
        CHECK(axis_of(all.choice.right_cane) == AxisId{7});
        Tenths of_spurs;
        for (const rules::Finding& f : all.judgement.findings)
            if (f.side == Side::right && (f.rule->per == rules::Per::spur || f.said.key.name == "rule.end-cut.missing-spur")) {
                of_spurs += f.out_of;
                CHECK(f.points == Tenths{0});
            }
        CHECK(of_spurs > Tenths{0});
        CHECK(all.best - all.points <= of_spurs);
        CHECK(all.charges.best - all.charges.mine == all.best - all.points);
        // It was lost where the spur went, or where the last wood for one was laid.
        for (const Charge& charge : all.charges.edits) CHECK(charge.edit <= 3);
    }

    TEST_CASE("a side without an acceptable cane: none is asked there, the best plan is still found, and nothing is held against it") {
        Vine vine = test::young_vine();  // a4, the far side's only cane, carries disease
        const Axis& sick = *vine.find(AxisId{4});
        vine.nodes[sick.first_node + 1].harm = Harm::spot;
        const test::Judged judged{vine, house};
        CHECK(judged.asked.cane == std::array<bool, 2>{true, false});
        CHECK(judged.asked.total() == Tenths{1000});
        const Planning planning(vine, house);
        const auto best = planning.best();
        REQUIRE(best.has_value());
        const rules::Judgement mine = *judged(best->plan);
        CHECK(mine.points == best->points);
        CHECK(mine.caps.empty());
        const auto said = std::find_if(mine.remarks.begin(), mine.remarks.end(), [](const rules::Finding& f) {
            return f.rule->name == rules::RuleName::cane_count && f.side == Side::right;
        });
        REQUIRE(said != mine.remarks.end());
        CHECK(said->said.key.name == "rule.cane-count.not-asked-laid");  // a3 goes that way, for the wire's sake
        for (const rules::Finding& f : mine.findings) CHECK((f.side != Side::right || f.out_of.count == 0));
    }
}
