// Looking ahead: the same weather for every plan, spreads by hand, and what cold and load must do.
#include <algorithm>

#include <doctest/doctest.h>

#include "scenarios/ahead/look_ahead.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/vine/vine_query.h"

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
        CHECK(told == 2 * static_cast<int>(ahead::figure_count));
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
    TEST_CASE("cut or laid late, buds open later and frost takes fewer; nothing else changes the day") {
        ahead::AheadWish winter = wish(1), late = wish(1), laid_late = wish(1), kicker = wish(1);
        for (ahead::AheadWish* w : {&winter, &late, &laid_late, &kicker})
            w->climate = weather::find_climate("cool-maritime");
        late.late = {130, 0, 130};
        laid_late.late = {130, 0, 0};
        kicker.kickers = true;
        kicker.late.upright_cut = 140;
        double frost_winter = 0, frost_late = 0, crop_winter = 0, crop_late = 0;
        for (std::uint64_t seed = 0; seed < 6; ++seed) {
            growth::Site site;
            site.seed = seed;
            site.frost = true;
            const Vine grown = *growth::grow_vine(site);
            const Vine vine = *prune(grown, growth::history_plan(grown, growth::habits_of(Pruner::good)));
            const auto in_time = ahead::look_ahead(vine, {}, winter).winters[0], cut = ahead::look_ahead(vine, {}, late).winters[0],
                       laid = ahead::look_ahead(vine, {}, laid_late).winters[0], other = ahead::look_ahead(vine, {}, kicker).winters[0];
            CHECK(cut[Figure::open_day].median >= laid[Figure::open_day].median);
            CHECK(laid[Figure::open_day].median > in_time[Figure::open_day].median);
            CHECK(other[Figure::open_day].median == in_time[Figure::open_day].median); // to the day [check 44]
            frost_winter += in_time[Figure::frost_loss_share].high;
            frost_late += cut[Figure::frost_loss_share].high;
            crop_winter += in_time[Figure::yield_kg].low;
            crop_late += cut[Figure::yield_kg].low;
        }
        CHECK(frost_late < 0.7 * frost_winter);
        CHECK(crop_late > crop_winter);
    }
    TEST_CASE("a kicker changes no day, comes off where the laid canes live, and is laid where they are dead") {
        ahead::AheadWish sound = wish(1), frozen = wish(1);
        weather::Temperatures mild = steady_season(9, 0), cold = mild;
        cold.lowest[static_cast<std::size_t>(125 - weather::first_day)] = -6;
        sound.own = {mild};
        frozen.own = {cold};
        int looked = 0;
        for (std::uint64_t seed = 0; seed < 8; ++seed) {
            growth::Site site;
            site.seed = seed;
            const Vine grown = *growth::grow_vine(site);
            Plan plan = growth::history_plan(grown, growth::habits_of(Pruner::good));
            const Vine without = *prune(grown, plan);
            // One cane more stays as it stands: the first that came off by a cut of its own.
            const auto canes = cane_candidates(grown);
            AxisId stays;
            for (const Edit& edit : plan.edits) {
                const auto* cut = std::get_if<Cut>(&edit);
                const bool whole_cane = cut && index_of(cut->past) == 0 && std::find(canes.begin(), canes.end(), axis_of(cut->past)) != canes.end();
                if (!stays && whole_cane && ripe_count_nodes(grown, *grown.find(axis_of(cut->past))).size() >= 10) stays = axis_of(cut->past);
            }
            if (!stays) continue;
            std::erase_if(plan.edits, [&](const Edit& edit) {
                const auto* cut = std::get_if<Cut>(&edit);
                return cut && axis_of(cut->past) == stays;
            });
            const auto pruned = prune(grown, plan);
            if (!pruned || pruned->find(stays)->removed) continue;
            ++looked;
            ahead::AheadWish kept_sound = sound, kept_frozen = frozen;
            for (ahead::AheadWish* w : {&kept_sound, &kept_frozen}) {
                w->kickers = true;
                w->late.upright_cut = 135;
            }
            const auto bare = ahead::look_ahead(without, {}, sound), with = ahead::look_ahead(*pruned, {}, kept_sound),
                       dead = ahead::look_ahead(without, {}, frozen), saved = ahead::look_ahead(*pruned, {}, kept_frozen);
            CHECK(with.winters[0][Figure::open_day].median == bare.winters[0][Figure::open_day].median);
            CHECK(with.kickers_laid == 0);
            CHECK(with.winters[0][Figure::yield_kg].median == doctest::Approx(bare.winters[0][Figure::yield_kg].median).epsilon(0.1));
            CHECK(saved.kickers_laid == ahead::weather_draws);
            CHECK(saved.winters[0][Figure::yield_kg].median > dead.winters[0][Figure::yield_kg].median);
        }
        CHECK(looked >= 4);
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
