#include <doctest/doctest.h>

#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_injury.h"
#include "sim/balance/vine_size.h"
#include "tests/balance/near.h"

using namespace spurwright::balance;
using spurwright::test::near;
using doctest::Approx;

namespace {

InjuryAnswer cornell(double share, double target = 24) { return more_for_killed(InjuryMethod::cornell, share, target); }

} // namespace

TEST_CASE("35 % of the buds dead: 35 % more [cornell-nny-2014, worked example]") { CHECK(cornell(0.35, 1).buds == Approx(1.35)); }
TEST_CASE("both arithmetics at 35, 20, 50 and 65 % of 24, computed") {
    const struct {
        double share, added, live, divided;
    } rows[] = {{0.35, 32.4, 21.06, 36.92}, {0.20, 28.8, 23.04, 30.0}, {0.50, 36.0, 18.0, 48.0}, {0.65, 39.6, 13.86, 68.57}};
    for (const auto& row : rows) {
        CHECK(cornell(row.share).buds == near(row.added, 0.01));
        CHECK(cornell(row.share).live_buds == near(row.live, 0.01));
        CHECK(buds_by_division(row.share, 24) == near(row.divided, 0.01));
    }
}
TEST_CASE("the threshold of 20 % [cornell-nny-2014]") {
    CHECK(cornell(0.10).buds == Approx(24));
    CHECK(cornell(0.10).live_buds == near(21.6, 0.01));
    CHECK(cornell(0.199).buds == Approx(24));
    CHECK(cornell(0.199).advice == Advice::as_usual);
    CHECK(cornell(0.20).buds == Approx(28.8));
    CHECK(cornell(0.20).advice == Advice::leave_more);
}
TEST_CASE("none dead: the target; all dead: wait (our choice)") {
    CHECK(cornell(0).buds == Approx(24));
    CHECK(cornell(1).advice == Advice::wait);
    CHECK(cornell(1).remembered);
}
TEST_CASE("35 % more from 15 %, half more from 35 %, then minimal [purdue-double]") {
    const auto at = [](double share) { return more_for_killed(InjuryMethod::purdue, share, 100); };
    CHECK(at(0.149).buds == Approx(100));
    CHECK(at(0.15).buds == Approx(135));
    CHECK(at(0.349).buds == Approx(135));
    CHECK(at(0.35).buds == Approx(150));
    CHECK(at(0.51).advice == Advice::minimal);
}
TEST_CASE("canes for the share lost from 20 to 50 %, above that wait for budburst [zabadal-2002]") {
    const auto at = [](double share) { return more_for_killed(InjuryMethod::msu, share, 100); };
    CHECK(at(0.19).advice == Advice::as_usual);
    CHECK(at(0.40).buds == Approx(140));
    CHECK(at(0.51).advice == Advice::wait);
}
TEST_CASE("double from 35 % (from memory)") {
    const InjuryAnswer answer = more_for_killed(InjuryMethod::ohio_penn, 0.40, 24);
    CHECK(answer.buds == Approx(48));
    CHECK(answer.remembered);
    CHECK(answer.source == "-");
}
TEST_CASE("kilograms a metre and the class of it (classes our choice), computed") {
    CHECK(size_of(0.8, 1.8) == near(0.444, 0.001));
    CHECK(size_of(0.3 * kg_per_lb, 0.3048) == near(0.446, 0.001));
    CHECK(size_of(0.2 * kg_per_lb, 0.3048) == near(0.298, 0.001));
    CHECK(size_of(0.4 * kg_per_lb, 0.3048) == near(0.595, 0.001));
    CHECK(size_class(size_of(0.8, 1.8), SizeSet::cool) == SizeClass::target);
    CHECK(size_class(size_of(0.50, 1.8), SizeSet::cool) == SizeClass::small);
    CHECK(size_class(size_of(1.2, 1.8), SizeSet::cool) == SizeClass::large);
    CHECK(size_class(size_of(2.0, 1.8), SizeSet::cool) == SizeClass::excessive);
    CHECK(size_class(0.3, SizeSet::cool) == SizeClass::target);
    CHECK(size_class(0.6, SizeSet::cool) == SizeClass::target);
    CHECK(size_class(1.0, SizeSet::cool) == SizeClass::large);
    CHECK(size_class(0.49, SizeSet::warm) == SizeClass::small);
    CHECK(size_class(1.0, SizeSet::warm) == SizeClass::target);
    CHECK(size_class(1.01, SizeSet::warm) == SizeClass::excessive);
}
TEST_CASE("prunings over shoots, and over metres of canopy, of six trellises within 12 % of the printed ones [ajev-6034]") {
    const struct {
        double kg, shoots, shoots_a_m, grams, kg_a_m;
    } rows[] = {{1.58, 27.3, 14.0, 64, 0.89}, {2.04, 34.8, 9.1, 64, 0.59}, {1.74, 46.3, 12.0, 40, 0.50},
                {1.99, 45.3, 11.8, 44, 0.54}, {1.73, 46.8, 12.3, 38, 0.48}, {2.51, 49.7, 13.2, 53, 0.72}};
    for (const auto& row : rows) {
        CHECK(row.kg * 1000 / row.shoots == Approx(row.grams).epsilon(0.12));
        CHECK(size_of(row.kg, row.shoots / row.shoots_a_m) == Approx(row.kg_a_m).epsilon(0.12));
    }
}
TEST_CASE("crop over prunings as printed [ajev-6021, ajev-6006]") {
    const struct {
        double crop, prunings, printed;
    } rows[] = {{9.8, 1.30, 7.5}, {11.8, 1.41, 8.4}, {20.2, 1.53, 13.2}, {24.3, 2.14, 11.3}, {15.9, 0.29, 54.8}, {22.0, 0.46, 47.8}};
    for (const auto& row : rows) CHECK(*crop_to_prunings(row.crop, row.prunings) == near(row.printed, 0.1));
    CHECK_FALSE(crop_to_prunings(9.8, 0).has_value());
}
