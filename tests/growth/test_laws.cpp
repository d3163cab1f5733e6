// The laws as numbers, against the tables they come from and against arithmetic by hand.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/core/numeric.h"
#include "sim/growth/laws.h"
#include "sim/growth/season.h"
#include "sim/growth/shoot.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_builder.h"

using namespace spurwright;
using namespace spurwright::growth;

TEST_SUITE("growth/laws") {
    TEST_CASE("thickness from mass and length: 35 g on 81 cm is 9.7 mm at the base, 64 g on 130 cm 10.4 mm") {
        CHECK(base_diameter({}, 81, 35) == doctest::Approx(9.7).epsilon(0.005));
        CHECK(base_diameter({}, 130, 64) == doctest::Approx(10.4).epsilon(0.005));
    }
    TEST_CASE("mass and diameter course agree: the taper's solid weighs what the shoot weighs") {
        const Constants c;
        const double base = base_diameter(c, 120, 50);
        double grams = 0;
        for (int i = 0; i < 12'000; ++i) {
            const double d = diameter_at(c, base, (i + 0.5) / 12'000) / 10;
            grams += c.density_fresh * numeric::pi / 4 * d * d * 0.01;
        }
        CHECK(grams == doctest::Approx(50).epsilon(0.001));
    }
    TEST_CASE("a laid cane of 9.4 mm thickens to 12.4, 11.8 and 11.2 mm where it had 9.4, 8.2 and 7.0") {
        CHECK(laid_diameter({}, 9.4, 9.4) == doctest::Approx(12.4));
        CHECK(laid_diameter({}, 8.2, 9.4) == doctest::Approx(11.8));
        CHECK(laid_diameter({}, 7.0, 9.4) == doctest::Approx(11.2));
    }
    TEST_CASE(
        "trunk rings add up to a radius of 11.67, 27.91 and 36.11 mm after 5, 20 and 30 years [migicovsky-2022]") {
        double radius = 0;
        for (int ring = 1; ring <= 30; ++ring) {
            radius += ring_width({}, ring);
            if (ring == 5) CHECK(radius == doctest::Approx(11.67).epsilon(0.001));
            if (ring == 20) CHECK(radius == doctest::Approx(27.91).epsilon(0.001));
            if (ring == 30) CHECK(radius == doctest::Approx(36.11).epsilon(0.001));
        }
    }
    TEST_CASE("non-count shoots: 29.5 at 10 nodes and 2.8 at 50 [epee-2022]") {
        CHECK(non_count_shoots({}, 10, 54) == doctest::Approx(29.5).epsilon(0.1));
        CHECK(std::fabs(non_count_shoots({}, 50, 54) - 2.8) < 1.9);
    }
    TEST_CASE("the cut is felt by the two buds next to it alone [antcliff-1955]") {
        const Constants c;
        const double b = inhibition(c, 50, 54);
        CHECK(budburst_p(c, b, 10, 12) == doctest::Approx(budburst_p(c, b, 10, 20)).epsilon(1e-12));
        CHECK(budburst_p(c, b, 11, 12) >= c.budburst_terminal_p);
        CHECK(budburst_p(c, b, 12, 12) >= c.budburst_terminal_p);
        CHECK(budburst_p(c, b, 1, 12) < budburst_p(c, b, 9, 12));
    }
    TEST_CASE("the taper read from steps is the taper to a hundred thousandth") {
        const SeasonSettings settings;
        Vine vine;
        vine.spacing = from_mm(1800);
        const ShootLaw law(vine, settings, 45, 30);
        for (int i = 0; i <= 1000; ++i)
            CHECK(std::fabs(law.taper_at(i / 1000.0) - diameter_at({}, 1.0, i / 1000.0)) < 1e-5);
    }
    TEST_CASE("check 36: canes of twelve nodes added, 12 to 80 nodes: never a heavier or thicker cane [greven-2014, "
              "keller-2015]") {
        const Constants c = trial_constants();
        double last_mass = 1e9, last_diameter = 1e9;
        for (const int nodes : {12, 24, 36, 48, 60, 72, 80}) {
            double burst = 0;
            for (int left = nodes; left > 0; left -= 12)
                for (int i = 1; i <= std::min(left, 12); ++i)
                    burst += budburst_p(c, inhibition(c, nodes, 54), i, std::min(left, 12));
            const double shoots = burst * (1 + c.double_share) + non_count_shoots(c, nodes, 54);
            const double length = mean_length(c, 125, 54, shoots), mass = shoot_mass(c, length, 1);
            CAPTURE(nodes);
            CHECK(mass < last_mass);
            CHECK(base_diameter(c, length, mass) < last_diameter);
            last_mass = mass;
            last_diameter = base_diameter(c, length, mass);
        }
    }
}
