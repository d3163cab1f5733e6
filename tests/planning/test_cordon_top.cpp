// The best rows of a cordon in order, against plain recursion that sorts them all; and what is left to do after some acts,
// against every row still open, each finished and judged.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/planning/cordon_charges.h"
#include "sim/planning/cordon_top.h"
#include "sim/planning/open_choices.h"
#include "sim/pruning/plan_text.h"
#include "tests/support/cordons.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

std::vector<CordonRanked> all_in_order(const CordonTables& tables) {
    std::vector<CordonRanked> all;
    for_each_pick(tables, [&](const CordonPick& pick) { all.push_back({pick, points_of(tables, pick), sum_of(tables, pick)}); });
    std::stable_sort(all.begin(), all.end(), ranks_above);
    return all;
}

Plan joined_with(Plan plan, const Plan& rest) {
    plan.edits.insert(plan.edits.end(), rest.edits.begin(), rest.edits.end());
    return plan;
}

}  // namespace

TEST_SUITE("planning/cordon-top") {
    const rules::HouseRules house = test::spur_cordon();

    TEST_CASE("on random tables the first so many are the first so many of all, ties, caps and bare arms too") {
        int differ = 0, short_ones = 0, ties = 0;
        for (std::uint64_t seed = 0; seed < test::sized<std::uint64_t>(400, 4'000); ++seed) {
            const CordonTables tables = test::random_cordon_tables(seed, 0);
            const std::vector<CordonRanked> all = all_in_order(tables);
            for (const std::size_t wanted : {std::size_t{1}, std::size_t{7}, std::size_t{60}, all.size() + 5}) {
                std::vector<CordonRanked> first(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(wanted, all.size())));
                short_ones += first.size() < wanted;
                differ += top_picks(tables, wanted) != first;
            }
            for (std::size_t i = 1; i < all.size(); ++i) ties += all[i].sum == all[i - 1].sum;
        }
        CHECK(differ == 0);
        CHECK(short_ones > 300);
        CHECK(ties > 1'000);
    }
    TEST_CASE("of the hand-drawn cordon's 54,075 rows the best thousand come in their order, the first the best plan") {
        const CordonTables tables = cordon_tables(test::cordon_vine(), house);
        std::vector<CordonRanked> all = all_in_order(tables);
        REQUIRE(all.size() == 54'075);
        all.resize(1'000);
        CHECK(top_picks(tables, 1'000) == all);
        CHECK(all.front() == best_pick(tables));
    }
    TEST_CASE("full size: a thousand rows of grown cordons, each above the next, as many at the last one's points as are counted") {
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            const Vine vine = test::grown(System::cordon, seed, 6 + static_cast<int>(4 * seed), 1.8);
            const CordonTables tables = cordon_tables(vine, house);
            const std::vector<CordonRanked> top = top_picks(tables, 1'000);
            REQUIRE(top.size() == std::min<std::uint64_t>(1'000, count_choices(tables)));
            CHECK(top.front() == best_pick(tables));
            for (std::size_t i = 0; i + 1 < top.size(); ++i) CHECK(ranks_above(top[i], top[i + 1]));
            const Tally first = tally(tables, top.front().points), last = tally(tables, top.back().points);
            CHECK(first.better == 0);
            CHECK(last.better < top.size());
            CHECK(last.better + last.equal >= top.size());
            for (std::size_t i = 0; i < top.size(); i += 97) {
                const auto after = prune(vine, complete(vine, house, choice_of(tables, top[i].pick)));
                REQUIRE(after.has_value());
                CHECK(rules::judge(vine, *after, house).points.count == top[i].points);
            }
        }
    }
    TEST_CASE("after a slip the best from here is that of every row still open, each finished and judged") {
        const Vine vine = test::cordon_vine();
        const CordonTables tables = cordon_tables(vine, house);
        const test::Judged judged{vine, house};
        const CordonChoice best = choice_of(tables, best_pick(tables).pick);
        int tried = 0;
        for (const auto& row : best)
            for (const SpurKept& spur : row) {
                const Plan slip{{Cut{node_id(spur.axis, 0), Length{3'000}, Tool::shears, {}}}};
                const auto now = prune(vine, slip);
                if (!now) continue;
                const CordonTables open = open_rows(tables, vine, *now, house);
                const CordonRanked left = top_picks(open, 1).at(0);
                const Plan rest = finish(vine, *now, house, choice_of(open, left.pick));
                const auto done = judged(joined_with(slip, rest));
                REQUIRE(done.has_value());
                CHECK(left.points < best_pick(tables).points + 1);
                Tenths most;
                int sampled = 0;
                for_each_pick(open, [&](const CordonPick& pick) {
                    if (sampled++ % 29) return;  // every row would take minutes
                    const auto here = judged(joined_with(slip, finish(vine, *now, house, choice_of(open, pick))));
                    REQUIRE(here.has_value());
                    most = std::max(most, here->points);
                });
                CHECK(most <= done->points);
                ++tried;
            }
        CHECK(tried >= 4);
    }
    TEST_CASE("whatever was done before, the rest is legal, leaves nothing undone and is worth what carrying it out is judged at") {
        int plans = 0;
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            const Vine vine = test::grown(System::cordon, seed, 5 + static_cast<int>(2 * seed), 1.8);
            const CordonTables tables = cordon_tables(vine, house);
            const Plan whole = best_of_cordon(vine, house).plan;
            for (std::size_t n = 0; n <= whole.edits.size(); n += 3) {
                Plan some;
                some.edits.assign(whole.edits.begin(), whole.edits.begin() + static_cast<std::ptrdiff_t>(n));
                const auto now = prune(vine, some);
                REQUIRE(now.has_value());
                const CordonRanked left = top_picks(open_rows(tables, vine, *now, house), 1).at(0);
                CHECK(left == best_pick(tables));  // nothing of the best plan is lost by beginning it
                const auto after = prune(vine, joined_with(some, finish(vine, *now, house, choice_of(tables, left.pick))));
                REQUIRE(after.has_value());
                CHECK(rules::judge(vine, *after, house).points.count == left.points);
                ++plans;
            }
        }
        CHECK(plans > 40);
    }
}
