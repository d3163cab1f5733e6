// Wounds in old wood dry back: what a stub takes, and what flush cuts lose. And the luck of a crop.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;

namespace {

struct Lost {
    int latent = 0, dead = 0;
};

Lost after(const Vine& vine, double stub, const growth::SeasonSettings& settings) {
    growth::PrunerHabits habits;
    habits.stub_low = habits.stub_high = stub;
    const Vine next = growth::season(*prune(vine, growth::history_plan(vine, habits)), settings);
    CHECK_FALSE(check_vine(next).has_value());
    Lost lost;
    for (const Bud& bud : next.buds) lost.latent += bud.kind == BudKind::latent;
    for (const Axis& axis : next.axes) lost.dead += axis.state == AxisState::dead && age(next, axis) == 2;
    return lost;
}

struct Both {
    Lost stubs, flush;
    int vines = 0;
};
Both both(const growth::SeasonSettings& settings) {
    Both b;
    for (std::uint64_t seed = 0; seed < 150; ++seed) {
        growth::Site site;
        site.seed = seed;
        site.age = 8 + static_cast<int>(seed % 8);
        const Vine vine = *growth::grow_vine(site);
        const auto add = [](Lost& into, const Lost& more) { into.latent += more.latent, into.dead += more.dead; };
        add(b.stubs, after(vine, 1.5, settings));
        add(b.flush, after(vine, 0.1, settings));
        ++b.vines;
    }
    return b;
}

} // namespace

TEST_SUITE("growth/dry-back") {
    // The accepted rule of one diameter is itself disputed [ives-8418, ugniblanc-oeno]: the depth is drawn about it.
    TEST_CASE("a stub takes the drying of its cut; flush cuts lose sleeping buds, and now and then what stands beside them") {
        const Both b = both({});
        MESSAGE("150 winters: latent buds left " << b.stubs.latent << " with stubs, " << b.flush.latent << " flush; pieces dead " << b.stubs.dead << ", " << b.flush.dead);
        CHECK(b.flush.latent < 0.9 * b.stubs.latent);
        CHECK(b.flush.dead >= 3 * b.stubs.dead); // three times as often: our choice
        CHECK(b.flush.dead >= b.vines / 20);
        CHECK(b.flush.dead <= b.vines / 2);
    }
    TEST_CASE("published trials are not touched by it") {
        const Both b = both(growth::trial_settings());
        CHECK(b.stubs.dead == 0);
        CHECK(b.flush.dead == 0);
    }
    TEST_CASE("coombe-2019: the crop of one vine varies by more than its shoots tell, and by nothing in the mean") {
        growth::SeasonSettings with, without;
        without.constants.crop_sd = 0;
        double sum = 0, squares = 0;
        int n = 0;
        for (std::uint64_t seed = 0; seed < 400; ++seed) {
            growth::Site site;
            site.seed = seed;
            site.age = 6;
            const Vine cut = [&] { const Vine vine = *growth::grow_vine(site); return *prune(vine, growth::history_plan(vine, {})); }();
            growth::SeasonNotes a, b;
            season(cut, with, &a);
            season(cut, without, &b);
            CHECK(a.bunches == b.bunches);
            const double share = a.yield_kg / b.yield_kg;
            sum += share, squares += share * share, ++n;
        }
        const double mean = sum / n, spread = std::sqrt(squares / n - mean * mean) / mean;
        MESSAGE("mean " << mean << ", spread " << spread);
        CHECK(mean == doctest::Approx(1).epsilon(0.05));
        CHECK(spread == doctest::Approx(0.34).epsilon(0.12));
    }
}
