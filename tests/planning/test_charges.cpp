// Losses charged to the act that made them unavoidable; what is still open on a vine in work; the rest of a plan.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <numeric>

#include "sim/growth/history.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/charged_findings.h"
#include "sim/planning/charges.h"
#include "sim/planning/open_choices.h"
#include "sim/planning/what_if.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/little_vine.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

growth::Site site(std::uint32_t number) {
    growth::Site s;
    s.seed = 700 + number;
    s.age = 4 + static_cast<int>(number) % 15;
    s.pruner = static_cast<Pruner>(number % 6);
    return s;
}

Tenths all_of(const Charges& charges) {
    return std::accumulate(charges.by_step.begin(), charges.by_step.end(), Tenths{}, [](Tenths a, Tenths b) { return a + b; });
}

Vine after_some(const Vine& before, const Plan& plan, std::size_t edits) {
    Plan some;
    some.edits.assign(plan.edits.begin(), plan.edits.begin() + static_cast<std::ptrdiff_t>(std::min(edits, plan.edits.size())));
    auto now = prune(before, some);
    REQUIRE(now.has_value());
    return *std::move(now);
}

Plan joined(Plan plan, const Plan& rest) {
    plan.edits.insert(plan.edits.end(), rest.edits.begin(), rest.edits.end());
    return plan;
}

struct Tried {
    int plans = 0, with_charges = 0, unfair = 0, rising = 0;
    int shared_out = 0, shares_differ = 0, acts_differ = 0;  // losses; those whose shares do not sum to them; plans whose acts' shares do not
    std::array<int, 4> most{};   // losses by what took most of them
    std::array<int, 7> steps{};  // charges
    std::string first;
};

// Every loss is the sum of its shares, and over all losses an act's shares are its charge.
void try_shares(const Vine& vine, const Planning& planning, const Charges& found, const rules::Judgement& mine, Tried& tried) {
    const std::vector<FindingShares> shares = charged_findings(vine, house, planning, found, mine);
    REQUIRE(shares.size() == mine.findings.size());
    std::map<std::size_t, Tenths> by_act;
    Tenths open, hand;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        Tenths sum;
        for (const FindingShare& share : shares[i]) {
            sum += share.lost;
            if (share.to == LostTo::act) by_act[share.edit] += share.lost;
            if (share.to == LostTo::open) open += share.lost;
            if (share.to == LostTo::hand) hand += share.lost;
        }
        tried.shares_differ += sum != mine.findings[i].lost();
        const FindingShare* most = most_of(shares[i]);
        if (mine.findings[i].lost().count > 0 && most) ++tried.shared_out, ++tried.most[static_cast<std::size_t>(most->to)];
    }
    for (const Charge& charge : found.edits) by_act[charge.edit] -= charge.lost;
    const bool acts = std::all_of(by_act.begin(), by_act.end(), [](const auto& one) { return one.second == Tenths{}; });
    Tenths by_hand;
    for (const HandLoss& loss : found.hand) by_hand += loss.lost;
    tried.acts_differ += !acts || open != (found.mending ? found.mending->lost : Tenths{}) || hand != by_hand;
}

void try_plan(const Vine& vine, const Planning& planning, const test::Judged& judged, const Plan& plan, Tried& tried) {
    const auto mine = judged(plan);
    if (!mine) return;
    ++tried.plans;
    const Charges found = charges(vine, house, planning, plan, *mine);
    tried.with_charges += !found.edits.empty();
    try_shares(vine, planning, found, *mine, tried);
    Tenths parts;
    for (const Charge& charge : found.edits) {
        parts += charge.lost;
        ++tried.steps[static_cast<std::size_t>(charge.step)];
    }
    if (found.mending) parts += found.mending->lost;
    for (const HandLoss& loss : found.hand) parts += loss.lost;
    const bool fair = found.best - found.mine == all_of(found) && parts == all_of(found) &&
                      planning.best()->points - mine->points == all_of(found) + found.caps;
    if (!fair && tried.unfair++ == 0) tried.first = print_plan(plan);
    for (std::size_t i = 1; i < found.open_after.size(); ++i) tried.rising += found.open_after[i] > found.open_after[i - 1];
}

}  // namespace

TEST_SUITE("planning/charges") {
    TEST_CASE("what the steps lost is what the best plan has more, to the tenth, for plans gone wrong in any way") {
        Tried tried;
        std::uint64_t seed = 0;
        const auto try_on = [&](const Vine& vine, int each) {
            const Planning planning(vine, house);
            const test::Judged judged{vine, house};
            const auto good = planning.top(20);
            if (good.empty()) return;
            for (int i = 0; i < each; ++i) {
                const std::uint64_t number = ++seed;
                try_plan(vine, planning, judged, test::random_edits(vine, number, between(draw(number, 1, 0), 1, 25)), tried);
                const int which = between(draw(number, 2, 0), 0, static_cast<int>(good.size()) - 1);
                const Plan wrong = test::spoilt(vine, good[static_cast<std::size_t>(which)].plan, number);
                try_plan(vine, planning, judged, wrong, tried);
                try_plan(vine, planning, judged, joined(test::random_edits(vine, number, 3), wrong), tried);
            }
        };
        for (const test::NamedVine& small : test::small_vines()) try_on(small.vine, 60);
        for (std::uint32_t number = 0; number < 6; ++number) try_on(test::grown(site(number)), 15);
        CAPTURE(tried.first);
        CHECK(tried.unfair == 0);
        CHECK(tried.shares_differ == 0);
        CHECK(tried.acts_differ == 0);
        CHECK(tried.shared_out > 3'000);
        for (const int by : tried.most) CHECK(by > 100);
        CHECK(tried.rising == 0);  // no dead end is ever left: less can be had, never more
        CHECK(tried.plans > 700);
        CHECK(tried.with_charges > 200);
        for (const rules::Step step : {rules::Step::choose, rules::Step::spurs, rules::Step::lengths})
            CHECK(tried.steps[static_cast<std::size_t>(step)] > 5);
    }
    TEST_CASE("the best plan is charged with nothing") {
        for (std::uint32_t number = 0; number < 4; ++number) {
            const Vine vine = test::grown(site(number));
            const Planning planning(vine, house);
            const auto best = planning.best();
            REQUIRE(best.has_value());
            const Charges found = charges(vine, house, planning, best->plan, *test::Judged{vine, house}(best->plan));
            CHECK(found.edits.empty());
            CHECK_FALSE(found.mending.has_value());
            CHECK(found.hand.empty());
            CHECK(all_of(found) == Tenths{});
        }
    }
    TEST_CASE("the wrong cane cut off is charged to that cut, as a matter of choosing, whatever came after") {
        const Vine vine = test::grown(site(1));
        const Planning planning(vine, house);
        const auto best = planning.best();
        REQUIRE(best->choice.left_cane);
        const AxisId lost = axis_of(best->choice.left_cane);
        const Plan slip{{Cut{node_id(lost, 0), Length{8'000}, Tool::shears, {}}}};
        const Vine now = after_some(vine, slip, 1);
        const auto rest = best_pick(open_choices(planning.tables(), now));
        REQUIRE(rest.has_value());
        const Choice next = choice_of(planning.tables(), rest->pick);
        CHECK(axis_of(next.left_cane) != lost);
        const Plan plan = joined(slip, finish(vine, now, house, next));
        const auto mine = test::Judged{vine, house}(plan);
        REQUIRE(mine.has_value());
        CHECK(mine->points.count == rest->points);  // repaired as well as can be
        const Charges found = charges(vine, house, planning, plan, *mine);
        REQUIRE(found.edits.size() == 1);
        CHECK(found.edits[0].edit == 0);
        CHECK(found.edits[0].missed == lost);
        CHECK(found.edits[0].step == rules::Step::choose);
        CHECK(found.edits[0].better == best->choice);
        CHECK(found.edits[0].left == next);
        CHECK(found.edits[0].lost == Tenths{best->sum.count - rest->sum});
        CHECK(found.of(rules::Step::choose) == found.edits[0].lost);
    }
    TEST_CASE("a cane cut too short is charged to lengths, a spur cut too short to spurs") {
        int canes = 0, spurs = 0;
        for (std::uint32_t number = 0; number < 10; ++number) {
            const Vine vine = test::grown(site(number));
            const Planning planning(vine, house);
            const auto best = planning.best();
            if (!best || !best->choice.left_cane || !best->choice.left_spur) continue;
            for (const bool cane : {true, false}) {
                const AxisId axis = cane ? axis_of(best->choice.left_cane) : best->choice.left_spur;
                const auto nodes = ripe_count_nodes(vine, *vine.find(axis), house.habits());
                // A cane of four buds; a stub that keeps a node but no count bud.
                const std::uint32_t last = cane ? nodes[3] : nodes[0] - 1;
                if (last == 0 || (cane && node_id(axis, last) == best->choice.left_cane)) continue;
                const Plan slip{{Cut{node_id(axis, last), Length{3'000}, Tool::shears, {}}}};
                const auto mine = test::Judged{vine, house}(slip);
                if (!mine) continue;
                const Charges found = charges(vine, house, planning, slip, *mine);
                if (found.edits.empty()) continue;  // another piece is worth as much
                CHECK(found.edits.size() == 1);
                CHECK(found.edits[0].on == axis);
                CHECK_FALSE(found.edits[0].missed);
                CHECK(found.edits[0].step == (cane ? rules::Step::lengths : rules::Step::spurs));
                ++(cane ? canes : spurs);
            }
        }
        CHECK(canes >= 5);
        CAPTURE(spurs);  // mostly a cane one bud longer makes up for it; that there are such charges is asked above
    }
    TEST_CASE("an empty plan lost nothing yet: all of it can still be done") {
        const Vine vine = test::little_vine();
        const Planning planning(vine, house);
        const Charges found = charges(vine, house, planning, {}, *test::Judged{vine, house}({}));
        CHECK(found.edits.empty());
        CHECK(found.open_after.size() == 1);
        CHECK(found.open_after[0] == planning.best()->points);
    }
}

TEST_SUITE("planning/open-choices") {
    TEST_CASE("a choice is open exactly where the rest of its plan ends with it, for every choice of the small vines") {
        int asked = 0, closed = 0, worth_less = 0;
        for (const test::NamedVine& small : test::small_vines()) {
            const VineTables tables = vine_tables(small.vine, house);
            const test::Judged judged{small.vine, house};
            const auto best = best_pick(tables.tables);
            if (!best) continue;
            const Plan good = complete(small.vine, house, choice_of(tables, best->pick));
            for (std::uint64_t way = 0; way < 6; ++way) {
                // Some of a good plan, or some of anybody's.
                const Plan some = way < 3 ? good : test::random_edits(small.vine, 40 + way, 6);
                const std::size_t edits = way < 3 ? (way + 1) * good.edits.size() / 4 : some.edits.size();
                const Vine now = after_some(small.vine, some, edits);
                const Plan done{{some.edits.begin(), some.edits.begin() + static_cast<std::ptrdiff_t>(edits)}};
                const Tables open = open_choices(tables, now);
                std::uint64_t number = 0;
                for_each_pick(tables.tables, [&](const Pick& pick) {
                    if (++number % 7 != way) return;
                    const Choice choice = choice_of(tables, pick);
                    const Plan plan = joined(done, finish(small.vine, now, house, choice));
                    const auto after = prune(small.vine, plan);
                    REQUIRE(after.has_value());
                    const auto facts = rules::measure_plan(small.vine, *after, house, judged.offers);
                    const bool reached = kept_choice(small.vine, facts, house) == choice;
                    ++asked;
                    closed += !is_choice(open, pick);
                    CAPTURE(small.name);
                    CAPTURE(print_plan(done));
                    CAPTURE(print_plan(plan));
                    CHECK(reached == is_choice(open, pick));
                    if (!reached) return;
                    CHECK(sum_of(open, pick) == sum_of(tables.tables, pick));
                    const int sum = rules::judge(small.vine, *after, house).points_before_caps.count;
                    if (way < 3) CHECK(sum == sum_of(open, pick));  // careful hands so far
                    worth_less += sum < sum_of(open, pick);
                });
            }
        }
        CHECK(asked > 500);
        CHECK(closed > 50);
        CHECK(worth_less > 0);
    }
    TEST_CASE("nothing done: the rest is the whole plan; all done: nothing is left") {
        const Vine vine = test::grown(site(3));
        const Planning planning(vine, house);
        const auto best = planning.best();
        CHECK(finish(vine, vine, house, best->choice) == best->plan);
        CHECK(finish(vine, *prune(vine, best->plan), house, best->choice).edits.empty());
    }
    TEST_CASE("a cane that snapped cannot be laid; the rest takes it off and lays another") {
        // A cane of the rough vine that breaks on its way.
        int snapped = 0;
        for (std::uint32_t number = 0; number < 12; ++number) {
            const Vine vine = test::grown(site(20 + number));
            const Planning planning(vine, house);
            for (const Axis& axis : vine.axes) {
                if (axis.removed || axis.state == AxisState::dead || !is_cane(vine, axis)) continue;
                const auto now = prune(vine, {{Lay{axis.id, Side::left, 2}}});
                if (!now || now->laid.empty()) continue;
                const auto row = std::find_if(now->laid.begin(), now->laid.end(), [&](const Laid& l) { return l.axis == axis.id && l.winter == now->winter; });
                if (row == now->laid.end() || row->state != LaidState::snapped) continue;
                const auto found = best_pick(open_choices(planning.tables(), *now));
                if (!found) continue;
                const Choice next = choice_of(planning.tables(), found->pick);
                CHECK((!next.left_cane || axis_of(next.left_cane) != axis.id));
                CHECK((!next.right_cane || axis_of(next.right_cane) != axis.id));
                CHECK(next.left_spur != axis.id);
                const Plan plan = joined({{Lay{axis.id, Side::left, 2}}}, finish(vine, *now, house, next));
                const auto judged = test::Judged{vine, house}(plan);
                REQUIRE(judged.has_value());
                CHECK(judged->points.count == found->points);
                if (++snapped >= 6) return;
                break;
            }
        }
        CHECK(snapped >= 3);
    }
}

TEST_SUITE("planning/what-if") {
    TEST_CASE("a cut moved to where the best plan has it gives the best plan's points") {
        const Vine vine = test::grown(site(4));
        const Planning planning(vine, house);
        const auto best = planning.best();
        REQUIRE(best->choice.left_cane);
        const auto nodes = ripe_count_nodes(vine, *vine.find(axis_of(best->choice.left_cane)), house.habits());
        int moved_any = 0;
        for (const std::uint32_t node : nodes) {
            const NodeId last = node_id(axis_of(best->choice.left_cane), node);
            const auto moved = with_cut_moved(vine, house, best->plan, last);
            REQUIRE(moved.has_value());
            const auto back = with_cut_moved(vine, house, *moved, best->choice.left_cane);
            REQUIRE(back.has_value());
            CHECK(test::Judged{vine, house}(*moved)->points <= best->points);
            const auto ties = [](const Plan& p) { return std::count_if(p.edits.begin(), p.edits.end(), [](const Edit& e) { return std::holds_alternative<Fasten>(e); }); };
            if (ties(*moved) < ties(best->plan)) continue;  // too short to be tied: nobody can know that it was
            CHECK(test::Judged{vine, house}(*back)->points == best->points);
            ++moved_any;
        }
        CHECK(moved_any >= 4);
        CHECK(better_ends(vine, house, best->plan).empty());
    }
    TEST_CASE("a bud too many is seen, and what its cut would win is what moving it wins") {
        const Vine vine = test::grown(site(5));
        const Planning planning(vine, house);
        const auto best = planning.best();
        const AxisId cane = axis_of(best->choice.right_cane);
        const auto nodes = ripe_count_nodes(vine, *vine.find(cane), house.habits());
        const auto longest = with_cut_moved(vine, house, best->plan, node_id(cane, nodes.back()));
        REQUIRE(longest.has_value());
        const Tenths now = test::Judged{vine, house}(*longest)->points;
        REQUIRE(now < best->points);
        const auto found = better_ends(vine, house, *longest);
        REQUIRE_FALSE(found.empty());
        for (const WhatIf& end : found) {
            CHECK(end.gained.count > 0);
            CHECK(end.points == now + end.gained);
            const auto moved = with_cut_moved(vine, house, *longest, end.last);
            REQUIRE(moved.has_value());
            CHECK(test::Judged{vine, house}(*moved)->points == end.points);
        }
    }
    TEST_CASE("wood that is not there, or that the plan takes off, cannot be ended elsewhere") {
        const Vine vine = test::little_vine();
        const auto best = Planning(vine, house).best();
        CHECK_FALSE(with_cut_moved(vine, house, best->plan, node_id(AxisId{99}, 2)).has_value());
        CHECK_FALSE(with_cut_moved(vine, house, best->plan, node_id(AxisId{4}, 77)).has_value());
        const Plan all_off{{Cut{node_id(AxisId{2}, 0), Length{10'000}, Tool::loppers, {}}}};
        const auto gone = with_cut_moved(vine, house, all_off, node_id(AxisId{4}, 4));
        REQUIRE_FALSE(gone.has_value());
    }
}
