// Buds opening on a pruned vine, late acts, and frost nights.
#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_query.h"
#include "sim/weather/climate.h"
#include "sim/weather/spring.h"

using namespace spurwright;
using namespace spurwright::weather;

namespace {

const growth::Constants constants;

// Warm from day 100 on at 18 C (8 C d a day), with one frost night.
Temperatures spring_with_frost(int frost_day, double frost_c) {
    Temperatures t;
    for (int day = first_day; day <= last_day; ++day) {
        t.mean.push_back(day < 100 ? 4 : 18);
        t.lowest.push_back(day == frost_day ? frost_c : 8);
    }
    return t;
}

Vine pruned_vine(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    const Vine vine = *growth::grow_vine(site);
    return *prune(vine, growth::history_plan(vine, growth::habits_of(Pruner::good)));
}

// Nodes that stood beyond the bud on its own cane before the cut.
std::uint32_t nodes_beyond(const Vine& vine, NodeId bud) { return vine.find(axis_of(bud))->node_count - 1 - index_of(bud); }

} // namespace

TEST_SUITE("weather/spring") {
    TEST_CASE("the frost table: labruscana is the mean of its two published points, sd from both, each stage tenderer "
              "[proebsting-1978, gardea-1987]") {
        double before_v = -100, before_l = -100;
        for (const FrostRow& row : frost_table()) {
            CAPTURE(word_of(row.stage));
            CHECK(std::fabs(row.labruscana - (row.concord_10 + row.concord_90) / 2) <= 0.0501);
            CHECK(row.vinifera > before_v);
            CHECK(row.labruscana > before_l);
            before_v = row.vinifera, before_l = row.labruscana;
            const FrostLimit limit = frost_limit(growth::Species::labruscana, row.stage, constants);
            CHECK(killed_share(row.concord_10, limit.lt50_c, limit.sd_c) == doctest::Approx(0.1).epsilon(0.1));
            CHECK(killed_share(row.concord_90, limit.lt50_c, limit.sd_c) == doctest::Approx(0.9).epsilon(0.02));
        }
        CHECK(stage_of(-0.1) == Stage::late_swell);
        CHECK(stage_of(0.5) == Stage::burst);
        CHECK(stage_of(2.5) == Stage::second_leaf);
        CHECK(stage_of(40) == Stage::fourth_leaf);
    }
    TEST_CASE("a still night is a degree colder half a metre lower, never more than two") {
        CHECK(at_height(0, 0.9, constants) == doctest::Approx(0));
        CHECK(at_height(0, 0.4, constants) == doctest::Approx(-1));
        CHECK(at_height(0, -5, constants) == doctest::Approx(-2));
        CHECK(at_height(0, 9, constants) == doctest::Approx(2));
    }
    TEST_CASE("a joint stretches over five phyllochrons, ever longer") {
        CHECK(extension(0, constants) == doctest::Approx(0.01));
        CHECK(extension(2.5, constants) == doctest::Approx(0.5));
        CHECK(extension(5, constants) == doctest::Approx(0.99));
    }
    TEST_CASE("canes laid in winter open evenly; laid late, their lower buds lag and stand more frost") {
        const Vine vine = pruned_vine(4);
        const int burst = 110;
        const Temperatures t = spring_with_frost(128, -2.0);
        const auto early = opening(vine, burst, {}, t, constants), late = opening(vine, burst, {125, 0}, t, constants);
        REQUIRE(early.size() == late.size());
        const auto lost_early = frost_losses(early, burst, growth::Species::vinifera, t, constants),
                   lost_late = frost_losses(late, burst, growth::Species::vinifera, t, constants);
        int held = 0;
        for (std::size_t i = 0; i < early.size(); ++i) {
            if (early[i].kept_as == KeptAs::laid) CHECK(early[i].day == burst);
            if (early[i].kept_as == KeptAs::spur) CHECK(early[i].day - burst <= 2);
            CHECK_FALSE(early[i].held);
            held += late[i].held;
            if (late[i].held) {
                CHECK(late[i].day > 125 + 5);
                CHECK(lost_late[i] < lost_early[i]);
            } else {
                CHECK(late[i].day == early[i].day);
                CHECK(lost_late[i] == lost_early[i]);
            }
        }
        CHECK(held >= 6);
    }
    TEST_CASE("cut late, buds wait for the cut: at 2 and 7 leaves of the tips by about 17 and 31 days [gatti-2016]") {
        const Vine vine = pruned_vine(4);
        const int burst = 110;
        const Temperatures t = spring_with_frost(0, 5);
        const auto early = opening(vine, burst, {}, t, constants);
        int last = 0;
        for (const auto& [unfolded, days] : {std::pair{2.0, 17}, std::pair{7.0, 31}}) {
            int cut = burst;
            while (leaves(burst, cut, t, constants) < unfolded) ++cut;
            const auto late = opening(vine, burst, {cut, 0, cut}, t, constants);
            REQUIRE(late.size() == early.size());
            std::size_t from_long = 0;
            for (std::size_t i = 0; i < late.size(); ++i) {
                REQUIRE(late[i].kept_as != KeptAs::upright);
                if (nodes_beyond(vine, late[i].node) < 6) continue; // too little stood beyond it to hold it
                ++from_long;
                CHECK(late[i].held); // spurs too: they stood whole
                CHECK(std::abs(late[i].day - early[i].day - days) <= 5);
                CHECK(late[i].day > last);
            }
            CHECK(2 * from_long > late.size());
            last = late.front().day;
        }
        // Cut in time and laid late, the tip that is left opens in time and spurs do not wait.
        const auto laid_late = opening(vine, burst, {130, 0, 0}, t, constants);
        int open_in_time = 0;
        for (std::size_t i = 0; i < laid_late.size(); ++i) open_in_time += laid_late[i].day == early[i].day;
        CHECK(open_in_time > 4);
        CHECK(open_in_time < static_cast<int>(early.size()));
    }
    TEST_CASE("on a kicker the tip opens and is lost first, its lower buds are held and mostly live") {
        growth::Site site;
        site.seed = 2;
        const Vine vine = *growth::grow_vine(site); // uncut: every cane stands upright and long
        const Temperatures t = spring_with_frost(118, -2.5);
        const auto buds = opening(vine, 110, {}, t, constants);
        const auto lost = frost_losses(buds, 110, growth::Species::vinifera, t, constants);
        double held = 0, open = 0, n_held = 0, n_open = 0;
        for (std::size_t i = 0; i < buds.size(); ++i) {
            (buds[i].held ? held : open) += lost[i];
            (buds[i].held ? n_held : n_open) += 1;
        }
        CHECK(open / n_open > 0.1);
        CHECK(held / n_held < open / n_open / 2);
    }
    TEST_CASE("cold takes the share it should, secondaries stand in, and nothing shows on the wood") {
        int buds = 0, killed = 0, frosted = 0;
        for (std::uint64_t seed = 0; seed < 40; ++seed) {
            Vine vine = pruned_vine(seed);
            const Temperatures t = spring_with_frost(0, 5);
            const auto open = opening(vine, 110, {}, t, constants);
            const ColdToll toll = take_cold(vine, open, std::vector<double>(open.size(), 0.5), {0.3, 0, 0}, seed);
            CHECK(toll.compound_dead == 0);
            buds += toll.buds, killed += toll.killed, frosted += toll.frosted;
            for (const Bud& bud : vine.buds) CHECK(bud.harmed == !(bud.primary || bud.secondary));
        }
        CHECK(killed == doctest::Approx(0.3 * buds).epsilon(0.1));
        CHECK(frosted == doctest::Approx(0.5 * 0.7 * buds).epsilon(0.1));
    }
    TEST_CASE("a frost of autumn takes nothing of spring's shoots") {
        const Vine vine = pruned_vine(1);
        const Temperatures t = spring_with_frost(290, -12);
        for (const double lost :
             frost_losses(opening(vine, 110, {}, t, constants), 110, growth::Species::vinifera, t, constants))
            CHECK(lost < 1e-6);
    }
}
