// The plans as good, held against every choice tried one by one: their number, their groups, each group's members.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "sim/planning/as_good.h"
#include "sim/planning/brute_force.h"
#include "sim/planning/eye_noise.h"
#include "sim/planning/planning.h"
#include "tests/support/full_size.h"
#include "tests/support/judged.h"
#include "tests/support/random_tables.h"
#include "tests/support/small_vines.h"

using namespace spurwright;
using namespace spurwright::planning;

namespace {

AsGood by_force(const Tables& tables, int least, std::size_t most) {
    std::map<std::tuple<int, int, int, int>, PlanGroup> groups;
    AsGood found;
    for_each_pick(tables, [&](const Pick& p) {
        const int points = points_of(tables, p);
        if (points < least) return;
        ++found.count;
        PlanGroup& g = groups[{p.left_cane, p.right_cane, p.left_spur, p.right_spur}];
        const bool first = g.count++ == 0;
        if (first) g = {p.left_cane, p.right_cane, p.left_spur, p.right_spur, {}, {}, 1, points, points};
        const std::uint16_t cuts[] = {p.left_cut, p.right_cut}, buds[] = {p.left_buds, p.right_buds};
        for (std::size_t s = 0; s < 2; ++s)
            for (auto [span, value] : {std::pair{&g.cuts[s], cuts[s]}, std::pair{&g.buds[s], buds[s]}})
                *span = first ? PlanGroup::Span{value, value}
                              : PlanGroup::Span{std::min(span->low, value), std::max(span->high, value)};
        g.low = std::min(g.low, points);
        g.high = std::max(g.high, points);
    });
    found.groups = groups.size();
    for (const auto& [key, group] : groups) found.shown.push_back(group);
    std::stable_sort(found.shown.begin(), found.shown.end(),
                     [](const PlanGroup& one, const PlanGroup& other) { return one.high > other.high; });
    found.shown.resize(std::min(most, found.shown.size()));
    return found;
}

}  // namespace

TEST_SUITE("planning/as-good") {
    const rules::HouseRules house;

    TEST_CASE("count, groups, order and members equal brute force on random tables, whatever the tolerance") {
        int differ = 0, capped = 0, many = 0;
        const std::uint32_t instances = test::sized(600u, 6'000u);
        for (std::uint32_t number = 0; number < instances; ++number) {
            const Tables tables = test::small_tables(number);
            const auto best = best_by_force(tables);
            if (!best) continue;
            for (const int within : {0, 20, 150}) {
                const int least = best->points - within;
                const AsGood found = as_good(tables, least, 5);
                differ += !(found == by_force(tables, least, 5));
                capped += least <= tables.hard_cap;
                many += found.groups > 5;
            }
        }
        CHECK(differ == 0);
        CHECK(capped > 50);  // so that groups under a cap were among them
        CHECK(many > 50);
    }
    TEST_CASE("on the small vines: membership of every choice is its points against the limit") {
        for (const test::NamedVine& small : test::small_vines()) {
            CAPTURE(small.name);
            const Planning planning(small.vine, house);
            const auto best = planning.best();
            if (!best) continue;
            const Tenths least = best->points - Tenths{20};
            const AsGood found = planning.as_good(least, 1'000'000);
            CHECK(found == by_force(planning.tables().tables, least.count, 1'000'000));
            CHECK(found.shown.front().high == best->points.count);
            std::uint64_t members = 0;
            for (const PlanGroup& group : found.shown) members += group.count;
            CHECK(members == found.count);
            CHECK(found.groups == found.shown.size());
        }
    }
    TEST_CASE("the best plan with other canes is the best of those that lay other canes") {
        int asked = 0;
        for (const test::NamedVine& small : test::small_vines()) {
            const Planning planning(small.vine, house);
            const auto best = planning.best();
            if (!best) continue;
            const VineTables& tables = planning.tables();
            const Pick first = *pick_of(tables, best->choice);
            std::optional<Ranked> other;
            for_each_pick(tables.tables, [&](const Pick& pick) {
                if (pick.left_cane == first.left_cane && pick.right_cane == first.right_cane) return;
                const Ranked now{pick, points_of(tables.tables, pick), sum_of(tables.tables, pick)};
                if (!other || better(now, *other)) other = now;
            });
            const auto found = planning.best_with_other_canes(best->choice);
            CAPTURE(small.name);
            REQUIRE(found.has_value() == other.has_value());
            if (!found) continue;
            ++asked;
            CHECK(found->points.count == other->points);
            CHECK(pick_of(tables, found->choice) == other->pick);
        }
        CHECK(asked >= 4);
    }
}

TEST_SUITE("planning/eye-noise") {
    TEST_CASE("who sees exactly is never off; who measured every piece is off as much as one who sees twice as well") {
        int some = 0;
        for (const test::NamedVine& small : test::small_vines()) {
            CAPTURE(small.name);
            rules::HouseRules exact, half, house;
            exact.acceptable.see_diameter = exact.acceptable.see_length = {};
            exact.acceptable.see_angle = {};
            half.acceptable.see_diameter = {house.acceptable.see_diameter.count / 2};
            half.acceptable.see_length = {house.acceptable.see_length.count / 2};
            half.acceptable.see_angle = {house.acceptable.see_angle.count / 2};
            const auto best = Planning(small.vine, house).best();
            if (!best) continue;
            CHECK(eye_noise(small.vine, exact, best->plan) == Tenths{});
            CHECK(tolerance(small.vine, exact, best->plan) == exact.acceptable.within);
            std::vector<AxisId> all;
            for (const Axis& axis : small.vine.axes) all.push_back(axis.id);
            const Tenths noise = eye_noise(small.vine, house, best->plan);
            CHECK(eye_noise(small.vine, house, best->plan, all) == eye_noise(small.vine, half, best->plan));
            CHECK(eye_noise(small.vine, house, best->plan) == noise);  // the same each time
            CHECK(tolerance(small.vine, house, best->plan) == std::max(house.acceptable.within, noise));
            some += noise.count > 0;
        }
        CHECK(some >= 4);
    }
}
