// What a thousand default vines hold: the practice vineyard's own demands, met by the model itself.
#include <doctest/doctest.h>

#include "tests/growth/census.h"
#include "tests/support/full_size.h"

using namespace spurwright;
using namespace spurwright::test;

namespace {

const int vines = test::sized(1000, 10'000);  // SPURWRIGHT_FULL

struct Crowd {
    Tally diameter, joint, evenness;
    int full_on_both = 0, tempted = 0, four_candidates = 0, on_both_sides = 0;
    double canes = 0, kept = 0, water_shoots = 0, blind = 0;
};

const Crowd& crowd() {
    static const Crowd counted = [] {
        Crowd c;
        for (int seed = 0; seed < vines; ++seed) {
            growth::Site site;
            site.seed = static_cast<std::uint64_t>(seed);
            const Grown g = grown(site);
            const auto found = candidates(g.vine);
            bool any[3] = {false, false, false}, full[3] = {false, false, false};
            int tempting_ones = 0;
            for (const Measured& m : found) {
                c.diameter.add(diameter_share(m.diameter, m.ratio, m.joint));
                c.joint.add(joint_share(m.joint));
                c.evenness.add(evenness_share(m.variation));
                any[static_cast<int>(m.axis->side)] = true;
                if (full_mark(m)) full[static_cast<int>(m.axis->side)] = true;
                tempting_ones += tempting(m);
            }
            c.full_on_both += full[1] && full[2];
            c.tempted += tempting_ones >= 2;
            c.four_candidates += found.size() >= 4;
            c.on_both_sides += any[1] && any[2];
            c.kept += g.notes.count_nodes;
            c.blind += g.notes.blind;
            for (const Axis& axis : g.vine.axes) {
                c.canes += is_cane(g.vine, axis);
                c.water_shoots += is_water_shoot(g.vine, axis);
            }
        }
        return c;
    }();
    return counted;
}

void within(double value, double low, double high) {
    CHECK(value >= low);
    CHECK(value <= high);
}

} // namespace

TEST_SUITE("growth/default-vines") {
    TEST_CASE("check 41: candidates too thin, too fat or bull 5 to 25 %, in part 15 to 45 %, our choice") {
        within(crowd().diameter.percent(Share::none), 5, 25);
        within(crowd().diameter.percent(Share::part), 15, 45);
    }
    TEST_CASE("check 41: joints too short or long on 3 to 15 % of candidates, in part 20 to 45 %, our choice") {
        within(crowd().joint.percent(Share::none), 3, 15);
        within(crowd().joint.percent(Share::part), 20, 45);
    }
    TEST_CASE("check 41: uneven joints on 5 to 25 % of candidates, our choice") {
        within(crowd().evenness.percent(Share::none) + crowd().evenness.percent(Share::part), 5, 25);
    }
    TEST_CASE("check 41: a full-mark candidate on each side and two tempting wrong ones in at least 80 % of vines, our "
              "choice") {
        CHECK(crowd().full_on_both >= 0.80 * vines);
        CHECK(crowd().tempted >= 0.80 * vines);
    }
    TEST_CASE("check 42: 24 to 28 buds kept give 26 to 35 one-year canes, 1 to 6 of them water shoots, 1 to 6 nodes "
              "blind, our choice") {
        within(crowd().kept / vines, 24, 28);
        within(crowd().canes / vines, 26, 35);
        within(crowd().water_shoots / vines, 1, 6);
        within(crowd().blind / vines, 1, 6);
    }
    TEST_CASE("every default vine has at least four candidates, nearly every one on both sides, our choice") {
        CHECK(crowd().four_candidates == vines);
        CHECK(crowd().on_both_sides >= 0.99 * vines);
    }
    TEST_CASE(
        "check 47: nine laid canes in ten of high-vigour vines lie in the range studied, 7.9 to 16.3 mm [eltom-2015]") {
        int laid = 0, inside = 0;
        for (int seed = 0; seed < 300; ++seed) {
            growth::Site site;
            site.seed = static_cast<std::uint64_t>(seed);
            site.vigour = Vigour::high;
            const Vine vine = *growth::grow_vine(site);
            const Vine cut = *prune(vine, growth::history_plan(vine, growth::habits_of(Pruner::good)));
            for (const Laid& row : cut.laid) {
                if (row.winter != cut.winter) continue;
                const double d = in_mm(thickness(cut, *cut.find(row.axis)));
                ++laid;
                inside += d >= 7.9 && d <= 16.3;
            }
        }
        CHECK(laid > 500);
        CHECK(inside >= 0.9 * laid);
    }
}
