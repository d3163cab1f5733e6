// Climates, drawn weather and heat sums.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/weather/climate.h"

using namespace spurwright;
using namespace spurwright::weather;

TEST_SUITE("weather/climate") {
    TEST_CASE("the four standard climates have the sums and classes computed for them") {
        struct Row {
            const char* name;
            double sum, january, july;
            WinklerClass of;
        };
        const growth::Constants c;
        for (const Row& row : {Row{"inland-continental", 1583, -1.0, 23.0, WinklerClass::ii},
                               Row{"colder-continental", 1479, -3.9, 22.9, WinklerClass::ii},
                               Row{"cool-maritime", 1202, 6.5, 18.4, WinklerClass::ib},
                               Row{"warm", 1962, 7.0, 23.0, WinklerClass::iv}}) {
            CAPTURE(row.name);
            const Temperatures t = smooth_season(*find_climate(row.name));
            CHECK(std::fabs(winkler_sum(t, c) - row.sum) <= 2);
            CHECK(std::fabs(t.mean_on(15) - row.january) <= 0.1);
            CHECK(std::fabs(t.mean_on(197) - row.july) <= 0.1);
            CHECK(winkler_class(winkler_sum(t, c)) == row.of);
        }
        CHECK(find_climate("moon") == nullptr);
    }
    TEST_CASE("drawn weather has the spread and the memory asked for, and days are drawn by their address") {
        const growth::Constants c;
        const Climate& climate = *find_climate("inland-continental");
        const Temperatures smooth = smooth_season(climate);
        double sum = 0, squares = 0, products = 0, n = 0;
        for (std::uint32_t year = 0; year < 60; ++year) {
            const Temperatures t = drawn_season(climate, c, 11, year);
            double before = 0;
            for (std::size_t i = 0; i < t.mean.size(); ++i) {
                const double x = t.mean[i] - smooth.mean[i];
                CHECK(t.mean[i] - t.lowest[i] == doctest::Approx(climate.day_range_c / 2));
                sum += x, squares += x * x, products += i > 0 ? x * before : 0, ++n;
                before = x;
            }
        }
        CHECK(std::fabs(sum / n) < 0.15);
        CHECK(std::sqrt(squares / n) == doctest::Approx(c.ar1_sd).epsilon(0.03));
        CHECK(products / squares == doctest::Approx(c.ar1_rho).epsilon(0.03));
        CHECK(drawn_season(climate, c, 11, 4).mean == drawn_season(climate, c, 11, 4).mean);
        CHECK(drawn_season(climate, c, 11, 4).mean != drawn_season(climate, c, 11, 5).mean);
        CHECK(drawn_season(climate, c, 12, 4).mean != drawn_season(climate, c, 11, 4).mean);
    }
    TEST_CASE("heat sums by hand") {
        Temperatures t;
        t.mean = {9, 12, 15, 10};
        t.lowest = {0, 0, 0, 0};
        CHECK(heat_sum(t, 10, first_day, first_day + 4) == 7);
        CHECK(heat_sum(t, 10, first_day + 2, first_day + 100) == 5);
        CHECK(day_of_sum(t, 10, first_day, 7) == first_day + 2);
        CHECK(day_of_sum(t, 10, first_day, 8) == t.end_day());
    }
}
