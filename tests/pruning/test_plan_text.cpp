// The text of a plan: canonical form, fixed points, and refusals with their column.
#include <doctest/doctest.h>

#include "sim/pruning/plan_text.h"

using namespace spurwright;

TEST_SUITE("pruning/plan-text") {
    TEST_CASE("print(parse(t)) is a fixed point and writes the canonical form") {
        struct Case { std::string_view typed, canonical; };
        for (const Case& c : {Case{"", ""}, Case{"plan1", ""}, Case{"plan1 cut a2.1+18 shears", "cut a2.1+18.0 shears"},
                              Case{"cut a2.1+18 shears;lay a4 left wraps 1", "cut a2.1+18.0 shears; lay a4 left wraps 1"},
                              Case{"tie a4.4", "tie a4.4+15.0"}, Case{"tie a4.4 tight", "tie a4.4+15.0 tight"}, Case{"tie a4.4+3 loose", "tie a4.4+3.0"},
                              Case{"lay a4 right wraps 2.5", "lay a4 right wraps 2.5"}, Case{"cut a2.0-3.0 loppers tilt -15", "cut a2.0-3.0 loppers tilt -15"},
                              Case{"cut a2.1+18.0 saw tilt 0", "cut a2.1+18.0 saw"}, Case{"mark  a6   spur ;  mark a6 none", "mark a6 spur; mark a6 none"}}) {
            CAPTURE(c.typed);
            const auto plan = parse_plan(c.typed);
            REQUIRE(plan);
            CHECK(print_plan(*plan) == c.canonical);
            CHECK(parse_plan(c.canonical).value() == *plan);
        }
    }
    TEST_CASE("refusals name the edit and the column") {
        struct Case { std::string_view typed, key; int step, column; };
        for (const Case& c : {Case{"chop a2.1+18 shears", "error.plan.unknown-word", 1, 1}, Case{"mark a4 left; snip w1", "error.plan.later-word", 2, 15},
                              Case{"cut a2.1 shears", "error.plan.place-wanted", 1, 5}, Case{"cut a2.1-3 shears", "error.plan.minus", 1, 9},
                              Case{"cut a2.1+1.25 shears", "error.plan.mm", 1, 10}, Case{"cut a2.1+nan shears", "error.plan.mm", 1, 10},
                              Case{"cut a2.1+99999999999 shears", "error.plan.mm", 1, 10}, Case{"cut a2.1+3 axe", "error.plan.tool", 1, 12},
                              Case{"lay a4 up wraps 1", "error.plan.side", 1, 8}, Case{"lay a4 left wraps 4", "error.plan.wraps", 1, 19},
                              Case{"lay a4 left wraps 1.0", "error.plan.wraps", 1, 19}, Case{"mark a4 boss", "error.plan.role", 1, 9},
                              Case{"mark a4", "error.plan.space-wanted", 1, 8}, Case{"mark a4 left mark a5 right", "error.plan.semicolon-wanted", 1, 14},
                              Case{"cut a2.1+3 saw tilt 61", "error.plan.tilt", 1, 21}, Case{"plan2 mark a4 left", "error.plan.newer", 0, 1},
                              Case{"mark a4 left;", "error.plan.unknown-word", 2, 14}, Case{"Mark a4 left", "error.plan.unknown-word", 1, 1}}) {
            CAPTURE(c.typed);
            const auto plan = parse_plan(c.typed);
            REQUIRE_FALSE(plan);
            CHECK(plan.error().key.name == c.key);
            CHECK(plan.error().where.step == c.step);
            CHECK(plan.error().where.column == c.column);
        }
    }
    TEST_CASE("2,000 edits are read, 2,001 and 64 KiB are refused") {
        std::string text = "mark a4 left";
        for (int i = 1; i < 2'000; ++i) text += ";mark a4 left";
        CHECK(parse_plan(text).value().edits.size() == 2'000);
        CHECK(parse_plan(text + ";mark a4 left").error().key.name == "error.plan.too-many");
        CHECK(parse_plan(std::string(70'000, ' ')).error().key.name == "error.plan.too-long");
        CHECK(edit_columns("mark a4 left; mark a5 right") == std::vector<int>{1, 15});
    }
}
