// How fast the exact search and the exact count are, as ratios inside one process against the tight enumerating loop:
// for each pair of canes all spur pairs listed once, then every two cut nodes x spur pair added, capped and compared.
// Prints; fails only where the answers differ. 48 canes stand as context, without a peer: the loop would take seconds.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include "sim/planning/best_plan.h"
#include "sim/planning/pieces.h"
#include "sim/planning/plan_count.h"
#include "sim/planning/top_plans.h"
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
            if (!may_stand_together(left, right)) continue;
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

using Clock = std::chrono::steady_clock;
volatile std::uint64_t consumed = 0;

double seconds(const std::function<std::uint64_t()>& work, int times) {
    const auto start = Clock::now();
    for (int i = 0; i < times; ++i) consumed = consumed + work();
    return std::chrono::duration<double>(Clock::now() - start).count() / times;
}

double at_share(std::vector<double> values, double share) {
    std::stable_sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
}

// Both sides interleaved; the median of the ratios of each pair.
void compare(const char* what, double bar, const std::function<std::uint64_t()>& peer,
             const std::function<std::uint64_t()>& own, int own_times, int pairs) {
    for (int i = 0; i < 3; ++i) seconds(peer, 1), seconds(own, own_times);
    std::vector<double> ratios, peer_times, own_seconds;
    for (int i = 0; i < pairs; ++i) {
        peer_times.push_back(seconds(peer, 1));
        own_seconds.push_back(seconds(own, own_times));
        ratios.push_back(peer_times.back() / own_seconds.back());
    }
    const double median = at_share(ratios, 0.5);
    std::printf("%-44s ratio %7.1f (10-90 %%: %.1f-%.1f)", what, median, at_share(ratios, 0.1), at_share(ratios, 0.9));
    if (bar > 0) std::printf("  bar %.0f: %s", bar, median >= bar ? "met" : "MISSED");
    std::printf("   [context: loop %.2f ms, own %.1f us]\n", at_share(peer_times, 0.5) * 1e3,
                at_share(own_seconds, 0.5) * 1e6);
}

void require(bool holds, const char* what) {
    if (holds) return;
    std::printf("the answers differ: %s\n", what);
    std::exit(1);
}

std::uint64_t sign(const Ranked& plan) { return static_cast<std::uint64_t>(plan.sum) + plan.pick.left_cane; }

void row(const char* name, int left, int right, int cuts, double bar_search, double bar_count) {
    const Tables tables = test::reference_tables(7, left, right, cuts);
    const Ranked best = *best_pick(tables);
    const int mine = best.points - 60;
    const Tally found = tally(tables, mine);
    require(best == best_by_loop(tables) && best == *best_pick(tables, Bound::off), "best plan");
    require(found == tally_by_loop(tables, mine), "counts");
    std::printf("%s: %llu plans, %llu of them better than the plan ranked\n", name,
                static_cast<unsigned long long>(found.counted), static_cast<unsigned long long>(found.better));
    const auto loop = [&] { return sign(best_by_loop(tables)); };
    compare(
        "  best plan, with the bound (shipped)", bar_search, loop, [&] { return sign(*best_pick(tables)); }, 50, 15);
    compare(
        "  best plan, without the bound", 0, loop, [&] { return sign(*best_pick(tables, Bound::off)); }, 50, 15);
    compare(
        "  counts of plans better and equal", bar_count, [&] { return tally_by_loop(tables, mine).better; },
        [&] { return tally(tables, mine).better; }, 5, 15);
}

void context(const char* name, int left, int right, int cuts) {
    const Tables tables = test::reference_tables(7, left, right, cuts);
    const Ranked best = *best_pick(tables);
    const Tally found = tally(tables, best.points - 60);
    std::printf(
        "%s: %llu plans; context: best plan %.0f us (%.0f us without the bound), counts %.1f ms, best 100 %.1f ms\n",
        name, static_cast<unsigned long long>(found.counted),
        seconds([&] { return sign(*best_pick(tables)); }, 50) * 1e6,
        seconds([&] { return sign(*best_pick(tables, Bound::off)); }, 20) * 1e6,
        seconds([&] { return tally(tables, best.points - 60).better; }, 5) * 1e3,
        seconds([&] { return sign(top_picks(tables, 100).back()); }, 3) * 1e3);
}

}  // namespace

int main() {
    std::printf("compiler %s, tables of seed 7\n", __VERSION__);
    row("14 canes, 7 + 7, 11 cut nodes", 7, 7, 11, 150, 8);
    row("14 canes, 9 + 5, 11 cut nodes", 9, 5, 11, 0, 0);
    row("6 canes, 3 + 3, 11 cut nodes", 3, 3, 11, 0, 0);
    context("48 canes, 24 + 24, 20 cut nodes", 24, 24, 20);
    context("48 canes, 30 + 18, 20 cut nodes", 30, 18, 20);
}
