// The published hardiness model, in single steps and whole winters.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/weather/budbreak.h"
#include "sim/weather/climate.h"
#include "sim/weather/kill.h"

using namespace spurwright;
using namespace spurwright::weather;

namespace {

const growth::Constants constants;

double step(double hardiness, double mean_c, Dormancy phase) {
    return hardiness_step(*find_hardiness("cabernet-sauvignon"), hardiness, mean_c, phase);
}

Temperatures steady(double mean_c, double lowest_c) {
    Temperatures t;
    t.mean.assign(season_days, mean_c);
    t.lowest.assign(season_days, lowest_c);
    return t;
}

} // namespace

TEST_SUITE("weather/hardiness") {
    TEST_CASE("single steps of Cabernet Sauvignon to a ten-thousandth [ferguson-2014]") {
        CHECK(std::fabs(step(-10.3, 0, Dormancy::endo) - -0.96603) < 1e-4);
        CHECK(std::fabs(step(-20, 10, Dormancy::eco) - 0.49999) < 1e-4);
        CHECK(std::fabs(step(-5, 10, Dormancy::eco) - 0.35122) < 1e-4);
        CHECK(std::fabs(step(-3, 10, Dormancy::eco) - 0.21098) < 1e-4);
    }
    TEST_CASE("twenty cultivars, each hardier at its hardiest, and none outside its limits in any climate "
              "[ferguson-2014]") {
        CHECK(hardiness_table().size() == 20);
        for (const Hardiness& row : hardiness_table()) {
            CAPTURE(row.cultivar);
            CHECK(row.hardiest < row.at_start);
            CHECK(row.at_start < row.least_hardy);
            for (const Climate& climate : climates())
                for (std::uint32_t year = 0; year < 5; ++year)
                    for (const double h : harden(row, drawn_season(climate, constants, 3, year)).hardiness) {
                        CHECK(h >= row.hardiest);
                        CHECK(h <= row.least_hardy);
                    }
        }
    }
    TEST_CASE("no softening before the first chilling day, and steady limits hold") {
        const Hardiness& row = *find_hardiness("riesling");
        CHECK(hardiness_step(row, row.at_start, 25, Dormancy::endo, false) == 0.0);
        CHECK(hardiness_step(row, row.hardiest, -20, Dormancy::endo) == doctest::Approx(0));
        CHECK(hardiness_step(row, row.least_hardy, 25, Dormancy::eco) == doctest::Approx(0));
        const HardinessCourse warm = harden(row, steady(20, 14));
        CHECK(warm.hardiness.back() == row.at_start);
        CHECK_FALSE(warm.eco_from.has_value());
    }
    TEST_CASE("cold climates break bud by hardiness, mild ones by a heat sum, and the answer says which") {
        const growth::Variety& cabernet = *growth::find_variety("cabernet-sauvignon");
        for (const char* name : {"inland-continental", "colder-continental", "inland-test"})
            CHECK(budbreak(cabernet, smooth_season(*find_climate(name)), constants).rule == BudbreakRule::hardiness);
        for (const char* name : {"cool-maritime", "warm"})
            CHECK(budbreak(cabernet, smooth_season(*find_climate(name)), constants).rule == BudbreakRule::heat_sum);
        CHECK(budbreak(cabernet, steady(1, -3), constants).rule == BudbreakRule::none);
    }
    TEST_CASE("whole winters of the inland test climate, day for day as computed from the published parameters "
              "[ferguson-2014]") {
        const Temperatures t = smooth_season(*find_climate("inland-test"));
        struct Row {
            const char* name;
            double hardiest;
            int day;
        };
        for (const Row& row : {Row{"cabernet-sauvignon", -25.06, 129}, Row{"chardonnay", -25.50, 125},
                               Row{"riesling", -26.06, 126}, Row{"merlot", -24.56, 129}, Row{"concord", -29.30, 121}}) {
            CAPTURE(row.name);
            const growth::Variety& variety = *growth::find_variety(row.name);
            CHECK(std::fabs(harden(*find_hardiness(variety.hardiness), t).hardiest() - row.hardiest) < 0.05);
            CHECK(budbreak(variety, t, constants).day == row.day);
        }
    }
    TEST_CASE("half the buds die at their own hardiness, secondaries and tertiaries stand more") {
        CHECK(winter_kill(0, constants).primary == doctest::Approx(0.5));
        CHECK(winter_kill(-2, constants).secondary == doctest::Approx(0.5));
        CHECK(winter_kill(-4, constants).tertiary == doctest::Approx(0.5));
        CHECK(winter_kill(-1.7, constants).primary == doctest::Approx(0.8413).epsilon(0.001));
        CHECK(winter_kill(20, constants).primary < 1e-6);
        double last = 1;
        for (double margin = -6; margin <= 6; margin += 0.5) {
            const BudKill kill = winter_kill(margin, constants);
            CHECK(kill.primary <= last);
            CHECK(kill.secondary < kill.primary);
            CHECK(kill.tertiary < kill.secondary);
            last = kill.primary;
        }
    }
    TEST_CASE("the worst night counts until buds open") {
        const HardinessCourse course = harden(*find_hardiness("merlot"), steady(2, -4));
        Temperatures night = steady(2, -4);
        night.lowest[150] = -40;
        CHECK(worst_margin(course, night, last_day) == doctest::Approx(-40 - course.hardiness[150]));
        CHECK(worst_margin(course, night, first_day + 150) > -10);
    }
}
