// The best plan that goes with tapes and cuts already made: of every pair of tapes on small vines, and of every length a
// taped cane was cut to, against every choice of the vine that keeps them, tried one by one. And that doing it is worth what
// it says, by the judge.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/brute_force.h"
#include "sim/planning/held_plan.h"
#include "sim/planning/open_choices.h"
#include "tests/support/judged.h"
#include "tests/support/little_vine.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

Vine after_plan(const Vine& vine, const Plan& plan) {
    auto now = prune(vine, plan);
    REQUIRE(now.has_value());
    return *std::move(now);
}

// Whether a choice keeps what is taped on the vine in hand, as taped.
bool keeps(const VineTables& tables, const Pick& pick, const Vine& now) {
    const auto row_of = [&](AxisId axis) {
        for (std::uint16_t row = 0; row < tables.tables.count(); ++row)
            if (tables.pieces[row].axis == axis) return row;
        return no_piece;
    };
    for (const Axis& axis : now.axes) {
        if (axis.mark == Role::left && pick.left_cane != row_of(axis.id)) return false;
        if (axis.mark == Role::right && pick.right_cane != row_of(axis.id)) return false;
        if (axis.mark == Role::spur && pick.left_spur != row_of(axis.id) && pick.right_spur != row_of(axis.id)) return false;
    }
    return true;
}

struct Tried {
    int held = 0, below_the_best = 0;
};

void compare(const Vine& vine, const Planning& planning, const Plan& tapes, Tried& tried) {
    const VineTables& tables = planning.tables();
    const Vine now = after_plan(vine, tapes);
    const auto held = best_holding(vine, house, tables, now);
    REQUIRE(held.has_value());
    const Tables open = open_choices(tables, now);
    int by_force = -1'000'000;
    for_each_pick(open, [&](const Pick& pick) {
        if (keeps(tables, pick, now)) by_force = std::max(by_force, points_of(open, pick));
    });
    CHECK((by_force == -1'000'000) == !held->not_held.empty());
    if (!held->not_held.empty()) return;
    ++tried.held;
    CHECK(held->best.points.count == by_force);
    CHECK(keeps(tables, *pick_of(tables, held->best.choice), now));
    Plan all = tapes;
    all.edits.insert(all.edits.end(), held->rest.edits.begin(), held->rest.edits.end());
    CHECK(rules::judge(vine, after_plan(vine, all), house).points == held->best.points);
    tried.below_the_best += held->best.points < planning.best()->points;
}

}  // namespace

TEST_CASE("the best plan with pieces taped equals brute force, for every pair of tapes on small vines, and is what the judge says") {
    Tried tried;
    for (const Vine& vine : {test::little_vine(), test::one_sided_vine(), test::sucker_vine(), test::young_vine(), test::rough_vine()}) {
        const Planning planning(vine, house);
        std::vector<Mark> marks;
        for (const Piece& piece : planning.tables().pieces)
            for (const Role role : {Role::left, Role::right, Role::spur}) marks.push_back({piece.axis, role});
        compare(vine, planning, {}, tried);
        for (std::size_t a = 0; a < marks.size(); ++a) {
            compare(vine, planning, Plan{{marks[a]}}, tried);
            for (std::size_t b = a + 1; b < marks.size(); ++b) {
                // Two on one place: only one of them can be kept, so that no choice keeps both.
                if (marks[a].axis == marks[b].axis || (marks[a].role == marks[b].role && marks[a].role != Role::spur)) continue;
                const auto side = [&](const Mark& m) {
                    for (std::size_t row = 0; row < planning.tables().pieces.size(); ++row)
                        if (planning.tables().pieces[row].axis == m.axis) return planning.tables().tables.candidates[row].side;
                    return Side::none;
                };
                if (marks[a].role == Role::spur && marks[b].role == Role::spur && side(marks[a]) == side(marks[b])) continue;
                compare(vine, planning, Plan{{marks[a], marks[b]}}, tried);
            }
        }
    }
    MESSAGE(tried.held << " sets of tapes held, " << tried.below_the_best << " of them below the best plan");
    CHECK(tried.held > 150);
    CHECK(tried.below_the_best > 50);  // so that taking the best of all would be caught
}

TEST_CASE("a taped cane that was cut keeps the length it was cut to, and the rest goes with it") {
    int lengths = 0, not_the_best = 0;
    for (const Vine& vine : {test::little_vine(), test::one_sided_vine(), test::sucker_vine(), test::young_vine(), test::rough_vine()}) {
        const Planning planning(vine, house);
        const VineTables& tables = planning.tables();
        for (std::size_t row = 0; row < tables.pieces.size(); ++row)
            for (const Side side : both_sides) {
                const Piece& piece = tables.pieces[row];
                if (!tables.tables.candidates[row].lies(side)) continue;
                for (const std::uint32_t node : piece.cut_nodes) {
                    const NodeId end = node_id(piece.axis, node);
                    const auto now = prune(vine, Plan{{Mark{piece.axis, side == Side::left ? Role::left : Role::right}, Cut{end, {5'000}, Tool::shears, {}}}});
                    if (!now || !now->nodes_of(*now->find(piece.axis)).back().removed) continue;  // whole: no length was cut
                    const auto held = best_holding(vine, house, tables, *now);
                    REQUIRE(held.has_value());
                    const auto laid = [&](const Choice& choice) { return side == Side::left ? choice.left_cane : choice.right_cane; };
                    CHECK(laid(held->best.choice) == end);
                    int by_force = -1'000'000;
                    for_each_pick(tables.tables, [&](const Pick& pick) {
                        if (laid(choice_of(tables, pick)) == end) by_force = std::max(by_force, points_of(tables.tables, pick));
                    });
                    CHECK(held->best.points.count == by_force);
                    ++lengths;
                    not_the_best += held->best.points < planning.best()->points;
                    for (const Edit& edit : held->rest.edits)
                        if (const auto* cut = std::get_if<Cut>(&edit)) CHECK((axis_of(cut->past) != piece.axis || index_of(cut->past) > node));
                }
            }
    }
    CHECK(lengths >= 8);
    CHECK(not_the_best >= 4);
}

TEST_CASE("tapes that no plan can keep are named, and the rest still stands") {
    const Vine vine = test::little_vine();
    const Planning planning(vine, house);
    // a5 stands upright above the wire and snaps on its way down to the near post.
    const Vine now = after_plan(vine, Plan{{Mark{AxisId{5}, Role::left}, Mark{AxisId{7}, Role::right}}});
    const auto held = best_holding(vine, house, planning.tables(), now);
    REQUIRE(held.has_value());
    REQUIRE(held->not_held == std::vector{AxisId{5}});
    CHECK(axis_of(held->best.choice.right_cane) == AxisId{7});
    CHECK(axis_of(held->best.choice.left_cane) == AxisId{4});
}

TEST_CASE("a kicker taped is the one left standing, not the one that careful hands would have taken") {
    rules::HouseRules frost;
    frost.standing.kickers = 1;
    frost.standing.frost_over = false;
    const Vine vine = test::rough_vine();
    const Planning planning(vine, frost);
    const rules::Offers offers = rules::offers(vine, frost);
    const auto best = planning.best();
    REQUIRE(best.has_value());
    const auto standing = [&](const Plan& plan) {
        AxisId kicker;
        for (const Edit& edit : plan.edits)
            if (const auto* mark = std::get_if<Mark>(&edit); mark && mark->role == Role::kicker) kicker = mark->axis;
        return kicker;
    };
    int other = 0;
    for (const AxisId axis : offers.standing) {
        const Vine now = after_plan(vine, Plan{{Mark{axis, Role::kicker}}});
        const auto held = best_holding(vine, frost, planning.tables(), now);
        if (!held || !standing(best->plan)) continue;
        CHECK(standing(held->best.plan) == axis);
        other += standing(best->plan) != axis;
    }
    CHECK(other > 0);
}
