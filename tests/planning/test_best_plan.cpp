// The exact search and the exact counts against plain nested loops over the same tables.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/best_plan.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/count_by_halves.h"
#include "sim/planning/plan_count.h"
#include "sim/planning/top_plans.h"
#include "tests/support/full_size.h"
#include "tests/support/random_tables.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

std::vector<Ranked> all_by_force(const Tables& tables) {
    std::vector<Ranked> all;
    for_each_pick(tables, [&](const Pick& pick) {
        all.push_back({pick, points_of(tables, pick), sum_of(tables, pick)});
    });
    std::stable_sort(all.begin(), all.end(), better);
    return all;
}

}  // namespace

TEST_SUITE("planning/best-plan") {
    const auto instances = test::sized<std::uint32_t>(3'000, 30'000);

    TEST_CASE("on 3,000 small tables the search finds the same plan, points and sum as nested loops, with and without "
              "its bound") {
        int differ = 0, capped = 0, suckers = 0, missing = 0, empty = 0;
        for (std::uint32_t number = 0; number < instances; ++number) {
            const Tables tables = test::small_tables(number);
            const auto best = best_by_force(tables);
            differ += best_pick(tables) != best || best_pick(tables, Bound::off) != best;
            if (!best) {
                ++empty;
                continue;
            }
            const Pick& p = best->pick;
            capped += best->points < best->sum;
            suckers += (p.left_cane != no_piece && tables.candidates[p.left_cane].sucker) ||
                       (p.right_cane != no_piece && tables.candidates[p.right_cane].sucker);
            missing += p.left_cane == no_piece || p.right_cane == no_piece || p.left_spur == no_piece ||
                       p.right_spur == no_piece;
        }
        CHECK(differ == 0);
        // The set would prove little if these never stood in a best plan.
        CHECK(capped > 30);
        CHECK(suckers > 100);
        CHECK(missing > 500);
        CHECK(empty < 100);
    }

    TEST_CASE("on 3,000 small tables the counts are those of nested loops") {
        int differ = 0;
        std::uint64_t plans = 0;
        for (std::uint32_t number = 0; number < instances; ++number) {
            const Tables tables = test::small_tables(number);
            const auto all = all_by_force(tables);
            plans += all.size();
            differ += count_choices(tables) != all.size();
            if (all.empty()) continue;
            for (const int points : {all.front().points, all.front().points - 1, all[all.size() / 2].points,
                                     all.back().points, tables.hard_cap, tables.soft_cap, -1}) {
                const Tally found = tally(tables, points);
                differ += found != tally_by_force(tables, points);
                differ += tally_by_halves(tables, points) != found;
                differ += count_at_least(tables, points) != found.better + found.equal;
            }
        }
        CHECK(differ == 0);
        CHECK(plans > 1'000'000);
    }

    TEST_CASE("the best 40 come in the order of nested loops") {
        int differ = 0;
        for (std::uint32_t number = 0; number < instances; number += 3) {
            const Tables tables = test::small_tables(number);
            auto all = all_by_force(tables);
            for (const std::size_t wanted : {std::size_t{1}, std::size_t{7}, std::size_t{40}}) {
                std::vector<Ranked> some(all.begin(),
                                         all.begin() + static_cast<std::ptrdiff_t>(std::min(wanted, all.size())));
                differ += top_picks(tables, wanted) != some;
            }
        }
        CHECK(differ == 0);
        CHECK(top_picks(test::small_tables(1), 0).empty());
    }

    TEST_CASE(
        "14 canes of 11 cut nodes, seven a side: 7,987,210 choices, and the same plan and counts as nested loops") {
        const Tables tables = test::reference_tables(1, 7, 7, 11);
        const auto best = best_by_force(tables);
        REQUIRE(best.has_value());
        CHECK(best_pick(tables) == best);
        CHECK(best_pick(tables, Bound::off) == best);
        CHECK(top_picks(tables, 3).front() == *best);
        const Tally found = tally(tables, best->points - 40);
        CHECK(found.counted == 7'987'210);
        CHECK(found == tally_by_force(tables, best->points - 40));
        CHECK(found.better > 0);
    }

    TEST_CASE(
        "the number of choices agrees with the formula counted by hand: 9 + 5 canes, and 48 canes of 20 cut nodes") {
        CHECK(count_choices(test::reference_tables(2, 9, 5, 11)) == 7'402'714);
        CHECK(count_choices(test::reference_tables(3, 24, 24, 20)) == 4'427'596'800);
    }

    TEST_CASE("canes of 255 cut nodes, and a cane of one beside them, are searched like the rest") {
        test::TableWishes wishes;
        wishes.left = 2;
        wishes.right = 1;
        wishes.cuts_low = wishes.cuts_high = 255;
        wishes.range = 30;
        Tables tables = test::random_tables(5, wishes);
        for (auto& laid : tables.candidates[1].cane)
            for (auto& load : laid) load.resize(std::min<std::size_t>(load.size(), 1));
        for (Candidate& c : tables.candidates) c.spur.resize(std::min<std::size_t>(c.spur.size(), 1));
        const auto best = best_by_force(tables);
        REQUIRE(best.has_value());
        CHECK(best_pick(tables) == best);
        CHECK(tally(tables, best->points) == tally_by_force(tables, best->points));
    }

    TEST_CASE("tables without a cane have no choice, and nothing breaks") {
        Tables tables;
        shape_matrices(tables);
        CHECK_FALSE(best_pick(tables).has_value());
        CHECK(count_choices(tables) == 0);
        CHECK(top_picks(tables, 5).empty());
        CHECK(tally(tables, 0) == Tally{});
    }
}
