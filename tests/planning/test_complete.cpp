// The space of choices and the one full plan of each, on vines small enough to count and write down by hand.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "sim/planning/brute_force.h"
#include "sim/planning/complete.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/little_vine.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

const rules::HouseRules house;

NodeId node(std::uint32_t axis, std::uint32_t index) { return node_id(AxisId{axis}, index); }

const Piece* piece_of(const std::vector<Piece>& all, std::uint32_t axis) {
    for (const Piece& piece : all)
        if (piece.axis == AxisId{axis}) return &piece;
    return nullptr;
}

}  // namespace

TEST_SUITE("planning/choice") {
    TEST_CASE("the little vine's pieces are those counted by hand") {
        const auto all = pieces(test::little_vine(), house);
        REQUIRE(all.size() == 4);
        struct Expected {
            std::uint32_t axis;
            std::size_t cuts, lengths;
            Side side;
        };
        // a5 is 10 mm thick, bolt upright and starts above the wire: it would break on its way down.
        for (const Expected& e : {Expected{4, 2, 3, Side::left}, Expected{5, 0, 3, Side::left},
                                  Expected{6, 0, 2, Side::right}, Expected{7, 1, 3, Side::right}}) {
            CAPTURE(e.axis);
            const Piece* piece = piece_of(all, e.axis);
            REQUIRE(piece);
            CHECK(piece->cut_nodes.size() == e.cuts);
            CHECK(piece->spur_nodes.size() == e.lengths);
            CHECK(piece->side == e.side);
            CHECK(piece->lies[0] == (e.cuts > 0));
            CHECK(piece->lies[1] == (e.cuts > 0));
        }
    }
    // Canes a4 (2 cut nodes) and a7 (1), each to either side; spurs a4, a5 (3 lengths each) left, a6 (2), a7 (3) right, or none.
    // a4 alone: 4 ways x (1 + 3) x (1 + 5); a7 alone: 2 x (1 + 6) x (1 + 2); both: 4 x (1 + 3) x (1 + 2).
    TEST_CASE("the little vine has 186 choices, as counted by hand") {
        const Planning planning(test::little_vine(), house);
        CHECK(planning.counted() == 186);
        CHECK(planning.count({0}).counted == 186);
    }
    TEST_CASE("suckers may be laid and are never a spur") {
        const auto all = pieces(test::sucker_vine(), house);
        for (const std::uint32_t axis : {8u, 9u}) {
            const Piece* piece = piece_of(all, axis);
            REQUIRE(piece);
            CHECK(piece->sucker);
            CHECK(piece->spur_nodes.empty());
            CHECK_FALSE(piece->cut_nodes.empty());
        }
        CHECK(piece_of(all, 10) == nullptr);  // two buds: neither
    }
    TEST_CASE("laterals and dead canes are no pieces, and a dead bud is neither cut at nor counted") {
        const auto all = pieces(test::rough_vine(), house);
        for (const std::uint32_t axis : {14u, 15u, 16u, 17u}) CHECK(piece_of(all, axis) == nullptr);
        const Piece* piece = piece_of(all, 7);
        REQUIRE(piece);
        CHECK(piece->spur_nodes == std::vector<std::uint32_t>{1, 2, 4});
        CHECK(piece->cut_nodes == std::vector<std::uint32_t>{5, 6});
    }
    TEST_CASE("choices and rows of the tables turn into each other") {
        const VineTables tables = vine_tables(test::rough_vine(), house);
        std::uint64_t seen = 0;
        for_each_pick(tables.tables, [&](const Pick& pick) {
            if (++seen % 97 == 0) CHECK(pick_of(tables, choice_of(tables, pick)) == pick);
        });
        CHECK_FALSE(pick_of(tables, {node(7, 3), {}, {}, {}, 0, 0}).has_value());   // no cut node: the bud is dead
        CHECK_FALSE(pick_of(tables, {node(99, 4), {}, {}, {}, 0, 0}).has_value());  // no such axis
        CHECK_FALSE(pick_of(tables, {{}, {}, AxisId{7}, {}, 2, 0}).has_value());    // no cane
        CHECK_FALSE(pick_of(tables, {node(7, 5), {}, AxisId{7}, {}, 2, 0}).has_value());  // twice the same axis
    }
}

TEST_SUITE("planning/complete") {
    TEST_CASE("two canes and a spur on the little vine, written out by hand") {
        const Choice choice{node(4, 5), node(7, 4), {}, AxisId{6}, 0, 2};
        CHECK(print_plan(complete(test::little_vine(), house, choice)) ==
              "mark a4 left; mark a7 right; mark a6 spur; cut a2.1+18.0 shears; cut a6.2+20.0 shears; cut a4.5+20.0 "
              "shears; "
              "cut a7.4+20.0 shears; lay a4 left wraps 1; lay a7 right wraps 1; tie a4.4+15.0 tight; tie a7.3+15.0 "
              "tight");
    }
    TEST_CASE("one cane and a spur: last year's cane goes at its base") {
        const Choice choice{{}, node(7, 4), {}, AxisId{6}, 0, 2};
        CHECK(print_plan(complete(test::little_vine(), house, choice)) ==
              "mark a7 right; mark a6 spur; cut a2.0+15.5 shears; cut a6.2+20.0 shears; cut a7.4+20.0 shears; lay a7 "
              "right wraps 1; "
              "tie a7.3+15.0 tight");
    }
    TEST_CASE("suckers go flush, other canes with their collar, laterals of what is kept short") {
        const Planning planning(test::rough_vine(), house);
        const std::string text =
            print_plan(complete(test::rough_vine(), house, {node(7, 6), {}, {}, AxisId{11}, 0, 2}));
        CAPTURE(text);
        CHECK(text.find("cut a12.0+8.0 shears") != std::string::npos);
        CHECK(text.find("cut a15.0+3.0 shears") != std::string::npos);
        CHECK(text.find("cut a16.0+2.4 shears") != std::string::npos);  // its joint is shorter
        CHECK(text.find("a17") == std::string::npos);                   // on the spur's wood that is cut off
        CHECK(text.find("a14") == std::string::npos);                   // dead wood is left
        const std::string suckers = print_plan(complete(test::sucker_vine(), house, {node(4, 5), {}, {}, {}, 0, 0}));
        CHECK(suckers.find("cut a8.0-4.0 shears") != std::string::npos);
        CHECK(suckers.find("cut a10.0-3.2 shears") != std::string::npos);
    }
    TEST_CASE("every full plan of the small vines is legal, keeps the vine sound and reads back from its text") {
        for (const test::NamedVine& small : test::small_vines()) {
            const Vine& vine = small.vine;
            CAPTURE(small.name);
            const VineTables tables = vine_tables(vine, house);
            std::uint64_t seen = 0;
            int refused = 0, unsound = 0, misread = 0;
            for_each_pick(tables.tables, [&](const Pick& pick) {
                if (++seen % 7 != 0) return;
                const Plan plan = complete(vine, house, choice_of(tables, pick));
                const auto after = prune(vine, plan);
                refused += !after;
                if (!after) return;
                unsound += check_vine(*after).has_value();
                misread += parse_plan(print_plan(plan)) != plan;
            });
            CHECK(seen > 0);
            CHECK(refused == 0);
            CHECK(unsound == 0);
            CHECK(misread == 0);
        }
    }
}
