// Looking ahead: the same weather for every plan, spreads by hand, and what cold and load must do.
#include <doctest/doctest.h>

#include "scenarios/ahead/look_ahead.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"

using namespace spurwright;
using ahead::Figure;

namespace {

Vine cut_vine(std::uint64_t seed, double load = 1.0) {
    growth::Site site;
    site.seed = seed;
    const Vine vine = *growth::grow_vine(site);
    growth::PrunerHabits habits = growth::habits_of(Pruner::good);
    habits.load = load;
    return *prune(vine, growth::history_plan(vine, habits));
}

ahead::AheadWish wish(int seasons) {
    ahead::AheadWish w;
    w.seasons = seasons;
    w.variety = &growth::varieties()[0];
    w.climate = weather::find_climate("inland-continental");
    return w;
}

weather::Temperatures steady_season(double mean, double coldest_night) {
    weather::Temperatures t;
    for (int day = weather::first_day; day <= weather::last_day; ++day) {
        t.mean.push_back(weather::mean_temperature(*weather::find_climate("inland-continental"), day) + mean);
        t.lowest.push_back(t.mean.back() - 6);
    }
    t.lowest[130] = coldest_night; // in January
    return t;
}

} // namespace

TEST_SUITE("scenarios/look-ahead") {
    TEST_CASE("spreads by hand: middle, a tenth below, a tenth above") {
        const ahead::Spread s = ahead::spread_of({5, 1, 3, 2, 4, 6, 8, 7, 9, 10, 11});
        CHECK(s.known);
        CHECK(s.median == 6);
        CHECK(s.low == 2);
        CHECK(s.high == 10);
        CHECK(ahead::spread_of({7}).low == 7);
        CHECK_FALSE(ahead::spread_of({}).known);
    }
    TEST_CASE("the same asked twice is the same, and a longer look begins like a shorter one") {
        const Vine vine = cut_vine(3);
        const auto two = ahead::look_ahead(vine, {}, wish(2)), again = ahead::look_ahead(vine, {}, wish(2)),
                   four = ahead::look_ahead(vine, {}, wish(4));
        int told = 0;
        for (std::size_t year = 0; year < 2; ++year)
            for (std::size_t i = 0; i < ahead::figure_count; ++i) {
                CHECK(two.winters[year].figures[i].median == again.winters[year].figures[i].median);
                CHECK(two.winters[year].figures[i].median == four.winters[year].figures[i].median);
                told += two.winters[year].figures[i].known;
            }
        CHECK(told == 24);
        int calls = 0;
        ahead::look_ahead(vine, {}, wish(1), [&] { ++calls; });
        CHECK(calls == ahead::weather_draws);
    }
    TEST_CASE(
        "more buds kept: more shoots, more blind nodes, thinner canes and a greater crop at first [greven-2014]") {
        double shoots = 0, blind = 0, thick = 0, crop = 0;
        for (std::uint64_t seed = 0; seed < 12; ++seed) {
            const auto usual = ahead::look_ahead(cut_vine(seed), {}, wish(1)).winters[0],
                       heavy = ahead::look_ahead(cut_vine(seed, 2.2), {}, wish(1)).winters[0];
            shoots += heavy[Figure::shoots].median - usual[Figure::shoots].median;
            blind += heavy[Figure::blind_nodes].median - usual[Figure::blind_nodes].median;
            thick += heavy[Figure::thickness_mm].median - usual[Figure::thickness_mm].median;
            crop += heavy[Figure::yield_kg].median - usual[Figure::yield_kg].median;
        }
        CHECK(shoots > 0);
        CHECK(blind > 0);
        CHECK(thick < 0);
        CHECK(crop > 0);
    }
    TEST_CASE(
        "a night far below what buds stand kills them, and crop with them; in a mild season no bud is said to die") {
        ahead::AheadWish sound = wish(1), frozen = wish(1), mild = wish(1);
        sound.own = {steady_season(0, -10)};
        frozen.own = {steady_season(0, -27)};
        mild.own = {steady_season(9, -27)};
        const Vine vine = cut_vine(5);
        const auto a = ahead::look_ahead(vine, {}, sound), b = ahead::look_ahead(vine, {}, frozen),
                   c = ahead::look_ahead(vine, {}, mild);
        CHECK(a.winters[0][Figure::buds_killed].median == 0);
        CHECK(b.winters[0][Figure::buds_killed].median > 10);
        CHECK(b.winters[0][Figure::yield_kg].median < 0.8 * a.winters[0][Figure::yield_kg].median);
        CHECK(b.budbreaks[0] == ahead::weather_draws);
        CHECK(c.budbreaks[1] == ahead::weather_draws);
        CHECK(c.winters[0][Figure::buds_killed].high == 0);
    }
}
