// How fast the exact search and the exact count are, as ratios inside one process against the tight enumerating loop:
// for each pair of canes all spur pairs listed once, then every two cut nodes x spur pair added, capped and compared.
// Prints; fails only where the answers differ. 48 canes stand as context, without a peer: the loop would take seconds.
#include <algorithm>
#include <cstdio>
#include <vector>

#include "sim/planning/as_good.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/pieces.h"
#include "sim/planning/plan_count.h"
#include "sim/planning/top_plans.h"
#include "tests/bench/ratio.h"
#include "tests/support/random_tables.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

struct SpurPair {
    SpurWay left, right;
    std::int32_t worth;
    int buds;
    bool hard;
};

// Calls use(pick parts, points, sum) with as little as can be done a plan.
template <class Use>
void tight_loop(const Tables& tables, Use use) {
    const auto left_canes = laid_canes(tables, Side::left), right_canes = laid_canes(tables, Side::right);
    std::vector<std::vector<SpurWay>> left_ways, right_ways;
    for (const LaidCane& cane : left_canes) left_ways.push_back(spur_ways(tables, Side::left, cane.row));
    for (const LaidCane& cane : right_canes) right_ways.push_back(spur_ways(tables, Side::right, cane.row));
    std::vector<SpurPair> spurs;
    for (std::size_t a = 0; a < left_canes.size(); ++a)
        for (std::size_t b = 0; b < right_canes.size(); ++b) {
            const LaidCane &left = left_canes[a], &right = right_canes[b];
            if (!may_stand_together(tables, left, right)) continue;
            spurs.clear();
            const bool sucker = left.sucker || right.sucker;
            const bool left_bare = bare_without_spur(tables, Side::left, left),
                       right_bare = bare_without_spur(tables, Side::right, right);
            for (const SpurWay& x : left_ways[a])
                for (const SpurWay& y : right_ways[b])
                    if ((x.row == no_piece || x.row != right.row) && (y.row == no_piece || y.row != left.row))
                        spurs.push_back({x, y, x.worth + y.worth, x.buds + y.buds,
                                         sucker || (left_bare && x.buds == 0) || (right_bare && y.buds == 0)});
            const std::int32_t others = tables.constant + tables.pair_of(left.row, right.row);
            for (int i = 0; i < left.cuts; ++i)
                for (int j = 0; j < right.cuts; ++j) {
                    const int fruiting = left.first_buds + i + right.first_buds + j;
                    std::array<std::int32_t, spur_states> rest, free_cap;
                    for (int s = 0; s < spur_states; ++s) {
                        const std::size_t load = at(fruiting + s < tables.enough_from ? Load::under : Load::enough);
                        rest[static_cast<std::size_t>(s)] =
                            others + left.worth[load][i] + right.worth[load][j] + tables.totals_of(fruiting, s);
                        free_cap[static_cast<std::size_t>(s)] =
                            fruiting + s >= tables.over_from ? tables.soft_cap : no_cap;
                    }
                    for (const SpurPair& pair : spurs) {
                        const auto state = static_cast<std::size_t>(pair.buds);
                        const std::int32_t sum = rest[state] + pair.worth;
                        const int cap = pair.hard ? std::min(free_cap[state], tables.hard_cap) : free_cap[state];
                        use(left, right, i, j, pair, std::min<int>(sum, cap), sum);
                    }
                }
        }
}

Ranked best_by_loop(const Tables& tables) {
    Ranked best{{}, -no_cap, -no_cap};
    tight_loop(tables, [&](const LaidCane& left, const LaidCane& right, int i, int j, const SpurPair& pair, int points,
                           std::int32_t sum) {
        if (points < best.points || (points == best.points && sum <= best.sum))
            return;  // plans come in their order within a sum
        best = {{left.row, right.row, static_cast<std::uint16_t>(i), static_cast<std::uint16_t>(j), pair.left.row,
                 pair.left.buds, pair.right.row, pair.right.buds},
                points,
                sum};
    });
    return best;
}

Tally tally_by_loop(const Tables& tables, int points_of_mine) {
    Tally tally;
    tight_loop(tables, [&](const LaidCane&, const LaidCane&, int, int, const SpurPair&, int points, std::int32_t) {
        ++tally.counted;
        tally.better += points > points_of_mine;
        tally.equal += points == points_of_mine;
    });
    return tally;
}

std::uint64_t sign(const Ranked& plan) { return static_cast<std::uint64_t>(plan.sum) + plan.pick.left_cane; }

void row(bench::Bench& bench, const char* name, int left, int right, int cuts, double bar_search, double bar_count) {
    const Tables tables = test::reference_tables(7, left, right, cuts);
    const Ranked best = *best_pick(tables);
    const int mine = best.points - 60;
    const Tally found = tally(tables, mine);
    bench.require(best == best_by_loop(tables) && best == *best_pick(tables, Bound::off), "best plan");
    bench.require(found == tally_by_loop(tables, mine), "counts");
    std::printf("%s: %llu plans, %llu of them better than the plan ranked\n", name,
                static_cast<unsigned long long>(found.counted), static_cast<unsigned long long>(found.better));
    const auto bar = [](double value) { return value > 0 ? bench::Bar::at_least : bench::Bar::none; };
    const auto loop = [&] { return sign(best_by_loop(tables)); };
    bench.ratio(
        "  L13 tight loop / best plan, with the bound (shipped)", bar(bar_search), bar_search, loop, 1,
        [&] { return sign(*best_pick(tables)); }, 50);
    bench.ratio(
        "  tight loop / best plan, without the bound", bench::Bar::none, 0, loop, 1,
        [&] { return sign(*best_pick(tables, Bound::off)); }, 50);
    bench.ratio(
        "  L14 tight loop / counts of plans better and equal", bar(bar_count), bar_count,
        [&] { return tally_by_loop(tables, mine).better; }, 1, [&] { return tally(tables, mine).better; }, 5);
    bench.ratio(
        "  L30 plans as good, counted and grouped / counts of plans better and equal",
        bar_count > 0 ? bench::Bar::at_most : bench::Bar::none, 5, [&] { return as_good(tables, mine, 20).count; }, 5,
        [&] { return tally(tables, mine).better; }, 5);
}

void context(const char* name, int left, int right, int cuts) {
    const Tables tables = test::reference_tables(7, left, right, cuts);
    const Ranked best = *best_pick(tables);
    const Tally found = tally(tables, best.points - 60);
    std::printf(
        "%s: %llu plans; context: best plan %.0f us (%.0f us without the bound), counts %.1f ms, best 100 %.1f ms\n",
        name, static_cast<unsigned long long>(found.counted),
        bench::seconds([&] { return sign(*best_pick(tables)); }, 50) * 1e6,
        bench::seconds([&] { return sign(*best_pick(tables, Bound::off)); }, 20) * 1e6,
        bench::seconds([&] { return tally(tables, best.points - 60).better; }, 5) * 1e3,
        bench::seconds([&] { return sign(top_picks(tables, 100).back()); }, 3) * 1e3);
}

}  // namespace

int main(int argc, char** argv) {
    bench::Bench bench(argc, argv);
    row(bench, "14 canes, 7 + 7, 11 cut nodes", 7, 7, 11, 150, 8);
    row(bench, "14 canes, 9 + 5, 11 cut nodes", 9, 5, 11, 0, 0);
    row(bench, "6 canes, 3 + 3, 11 cut nodes", 3, 3, 11, 0, 0);
    context("48 canes, 24 + 24, 20 cut nodes", 24, 24, 20);
    context("48 canes, 30 + 18, 20 cut nodes", 30, 18, 20);
    return bench.status();
}
