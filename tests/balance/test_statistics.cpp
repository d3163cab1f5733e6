// The statistics of reference vines against values that others printed, and against closed forms.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/balance/own_history.h"
#include "sim/balance/paired.h"
#include "sim/balance/spread.h"
#include "sim/balance/student.h"
#include "sim/balance/vines_needed.h"
#include "tests/balance/near.h"

using namespace spurwright::balance;
using spurwright::test::near;

TEST_CASE("Student's distribution: printed in the library's own documentation for 195 heat flow readings, mean 9.26146, deviation 0.022789 [from memory]") {
    const double values[][3] = {{0.50, 0.676, 0.001103}, {0.75, 1.154, 0.001883}, {0.90, 1.653, 0.002697}, {0.95, 1.972, 0.003219}, {0.99, 2.601, 0.004245}};
    for (const auto& [confidence, t, width] : values) {
        const auto level = confidence;  // clang captures no structured binding
        CAPTURE(level);
        CHECK(student_reach(confidence, 194) == near(t, 0.0005));
        CHECK(half_width(0.022789, 195, confidence) == near(width, 0.0000005));
    }
}
TEST_CASE("Student's test: printed in the library's own documentation for three mercury readings against 38.9, t -1.976, p 0.1869 [from memory]") {
    const PairedChange change = paired_change({38.9, 38.9, 38.9}, {38.9, 37.4, 37.1}, 0.95);
    CHECK(change.deviation == near(0.96437, 0.000005));
    CHECK(-change.mean == near(1.1, 1e-12));
    CHECK(-change.t == near(1.976, 0.0005));
    CHECK(change.p == near(0.1869, 0.00005));
}
TEST_CASE("vines to see: the library's documentation prints 13 readings for a change of 1.1 at a deviation of 0.96437 and both risks 0.05 [from memory]") {
    CHECK(std::ceil(student_freedom_to_see(1.1, 0.96437, 0.05, 0.05)) + 1 == 13);
    CHECK(std::ceil(student_freedom_to_see(1.1, 0.96437, 0.10, 0.10)) + 1 == 9);
}
TEST_CASE("Student's distribution in closed form: one degree of freedom is Cauchy's, two are 1 - t / sqrt(2 + t^2)") {
    for (const double t : {0.1, 0.5, 1.0, 2.0, 7.0, 100.0}) {
        CAPTURE(t);
        CHECK(student_p(t, 1) == near(1 - 2 / 3.14159265358979 * std::atan(t), 1e-12));
        CHECK(student_p(t, 2) == near(1 - t / std::sqrt(2 + t * t), 1e-12));
        CHECK(student_p(-t, 2) == student_p(t, 2));
    }
    CHECK(student_p(0, 5) == near(1, 1e-15));
    CHECK(normal_reach(0.95) == near(1.959963984540054, 1e-12));
    CHECK(student_reach(0.95, 1e9) == near(normal_reach(0.95), 1e-6));
    CHECK(student_reach(0.95, 9) == near(2.262157, 1e-6)); // any printed table
}
TEST_CASE("paired test: Student 1908, ten sleepers under two drugs, t 4.0621, p 0.002833, mean change 0.70 to 2.46 [from memory]") {
    const std::vector<double> one{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}, other{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
    const PairedChange change = paired_change(one, other, 0.95);
    CHECK(change.pairs == 10);
    CHECK(change.mean == near(1.58, 1e-12));
    CHECK(change.t == near(4.0621, 0.00005));
    CHECK(change.p == near(0.002833, 0.0000005));
    CHECK(change.low == near(0.7001142, 0.00000005));
    CHECK(change.high == near(2.4598858, 0.00000005));
}
TEST_CASE("no test is made of two pairs, nor where all changed alike; the mean is still told") {
    CHECK(!paired_change({1, 2}, {2, 3.5}, 0.95).tested);
    const PairedChange alike = paired_change({1, 2, 3, 4}, {2, 3, 4, 5}, 0.95);
    CHECK(!alike.tested);
    CHECK(alike.mean == 1);
    CHECK(paired_change({}, {}, 0.95).pairs == 0);
}
TEST_CASE("line: Anscombe 1973, the first of four, slope 0.5001, intercept 3.0001, r 0.8164, p 0.00217 [from memory]") {
    const LineFit line = line_through({10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5}, {8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68}, 0.95);
    REQUIRE(line.fitted);
    CHECK(line.slope == near(0.5001, 0.00005));
    CHECK(line.intercept == near(3.0001, 0.00005));
    CHECK(line.r == near(0.8164, 0.00005));
    CHECK(line.p == near(0.00217, 0.000005));
    CHECK(line.slope_low < line.slope);
    CHECK(line.slope_high - line.slope == near(line.slope - line.slope_low, 1e-12));
    CHECK(!line_through({1, 1, 1, 1, 1}, {1, 2, 3, 4, 5}, 0.95).fitted);
    CHECK(!line_through({1, 2, 3}, {1, 2, 3}, 0.95).fitted);
}
TEST_CASE("half widths of a mean of n vines that vary by 0.345: 30, 21, 15, 12 and 10 % for 5, 10, 20, 30 and 45 [coombe-2019, by resampling 352 vines]") {
    const double values[][2] = {{5, 0.30}, {10, 0.21}, {20, 0.15}, {30, 0.12}, {45, 0.10}};
    for (const auto& [n, share] : values) {
        const auto vines = n;
        CAPTURE(vines);
        CHECK(half_width_known(0.345, static_cast<int>(n), 0.95) == near(share, 0.005));
        CHECK(half_width(0.345, static_cast<int>(n), 0.95) > half_width_known(0.345, static_cast<int>(n), 0.95)); // a sample's own spread is less sure
    }
    // Drawn anew each winter, a change under 1.4 half widths is told from nothing by nobody: 30 % for 10, 21 % for 20.
    CHECK(std::sqrt(2.0) * half_width_known(0.345, 10, 0.95) == near(0.30, 0.005));
    CHECK(std::sqrt(2.0) * half_width_known(0.345, 20, 0.95) == near(0.21, 0.005));
}
TEST_CASE("vines for a precision: 23 samples for 0.046 kg/m at 90 %, of post spaces that range over 1.15 kg/m and are pooled by two, which halves the variance [taylor-2012]") {
    // What could be read prints neither the deviation nor the formula. That the range holds six deviations is our choice:
    // 1.15 / 6, over the root of two. Then the plain form for a block that was weighed whole, two-sided, is what meets the
    // figure: 23.5 samples. One-sided it would be 14; by Student, whose deviation is the sample's own, 26.
    const double deviation = 1.15 / 6 / std::sqrt(2.0);
    const double known = vines_for_known(deviation, 0.046, 0.90);
    MESSAGE("samples for 0.046 kg/m at 90 %, deviation known: ", known);
    CHECK(known >= 22.5);
    CHECK(known < 23.5); // to the nearest whole the printed 23
    CHECK(half_width_known(deviation, 23, 0.90) == near(0.046, 0.0005));
    CHECK(vines_for_known(deviation, 0.046, 0.80) < 15); // 90 % to one side alone
    // What this program asks of a grower, who knows the deviation from the vines weighed alone: three more.
    CHECK(vines_for(deviation, 0.046, 0.90) == 26);
    // 23 samples reach 0.046 by Student where post spaces deviate by this, 5 % less.
    const double of_23 = 0.046 * std::sqrt(23.0) / student_reach(0.90, 22);
    CHECK(vines_for(of_23, 0.046 * 1.0000001, 0.90) == 23);
    CHECK(of_23 / deviation == near(0.95, 0.01));
}
TEST_CASE("two groups: Student 1908, ten sleepers under each drug taken for different people, t -1.8608, 17.776 degrees, p 0.07939, -3.3655 to 0.2055 [from memory]") {
    const std::vector<double> one{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}, other{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
    const GroupDifference difference = group_difference(one, other, 0.95);
    CHECK(difference.tested);
    CHECK(difference.t == near(1.8608, 0.00005));
    CHECK(difference.freedom == near(17.776, 0.0005));
    CHECK(difference.p == near(0.07939, 0.000005));
    CHECK(difference.high == near(3.3654832, 0.00000005));
    CHECK(-difference.low == near(0.2054832, 0.00000005));
    CHECK(!group_difference({1, 2}, {1, 2, 3}, 0.95).tested);
    CHECK(!group_difference({1, 1, 1}, {2, 2, 2}, 0.95).tested);
    CHECK(group_difference({1, 1, 1}, {2, 2, 2}, 0.95).mean == 1);
}
TEST_CASE("vines for a precision: the fewest, and no fewer") {
    for (const double wanted : {0.05, 0.1, 0.2, 0.5, 3.0}) {
        CAPTURE(wanted);
        const int n = vines_for(0.35, wanted, 0.95);
        CHECK(half_width(0.35, n, 0.95) <= wanted);
        if (n > 2) CHECK(half_width(0.35, n - 1, 0.95) > wanted);
    }
    CHECK(vines_for(1, 1e-9, 0.95) == most_vines_needed);
    CHECK(vines_for(0, 0.1, 0.95) == 2);
    CHECK(vines_to_see(0.5, 0) == 2);
    CHECK(vines_to_see(0, 1) == most_vines_needed);
    CHECK(vines_to_see(1, 1) > vines_to_see(2, 1));
}
TEST_CASE("spread: quarters between the sorted values, deviation over n - 1") {
    const VineSpread spread = vine_spread({4, 1, 3, 2});
    CHECK(spread.n == 4);
    CHECK(spread.low == 1.75);
    CHECK(spread.median == 2.5);
    CHECK(spread.high == 3.25);
    CHECK(spread.deviation == near(1.2909944487, 1e-9));
    CHECK(vine_spread({}).n == 0);
    CHECK(vine_spread({5}).deviation == 0);
}
TEST_CASE("odd value: 3.1 kg of a vine that weighed about 0.9 is asked about, 1.2 is not; fewer than six others are never asked") {
    const Middle before = middle_of({0.9, 1.0, 0.8, 0.95, 0.85, 1.05});
    CHECK(is_odd(3.1, before));
    CHECK(!is_odd(1.2, before));
    CHECK(!is_odd(3.1, middle_of({0.9, 1.0, 0.8})));
    // The edge of our own band: the median is 0.925, the median distance 0.075.
    const double edge = 3.5 * 1.4826 * 0.075;
    CHECK(!is_odd(0.925 + edge - 0.001, before));
    CHECK(is_odd(0.925 + edge + 0.001, before));
    CHECK(is_odd(0.925 - edge - 0.001, before));
}
TEST_CASE("own history: only winters after which a vine held its weight count, and six of them at least") {
    std::vector<KeptYear> years;
    for (int i = 0; i < 6; ++i) years.push_back({30.0 + i, 1.0, 1.1});
    for (int i = 0; i < 20; ++i) years.push_back({60, 1.0, 0.7}); // lost a third: no example
    years.push_back({10, 0, 0.5});
    const auto history = own_history(years);
    REQUIRE(history);
    CHECK(history->years == 6);
    CHECK(history->median == 32.5);
    CHECK(history->low == 31.25);
    years.erase(years.begin());
    CHECK(!own_history(years));
}

TEST_CASE("no line is laid through values that are all alike, whatever their mean was rounded by") {
    const std::vector<double> buds(140, 26.7), kg{1.1, 1.4, 0.9, 1.3};
    std::vector<double> weights;
    for (std::size_t i = 0; i < buds.size(); ++i) weights.push_back(kg[i % 4]);
    CHECK_FALSE(line_through(buds, weights, 0.95).fitted);
    CHECK_FALSE(line_through(weights, buds, 0.95).fitted);
}
