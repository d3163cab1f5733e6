// The calculators against the worked examples of the works named; what is ours is said so.
#include <doctest/doctest.h>

#include "sim/balance/bud_formula.h"
#include "sim/balance/bud_target.h"
#include "sim/balance/effective_shoots.h"
#include "tests/balance/near.h"

using namespace spurwright::balance;
using spurwright::test::near;
using doctest::Approx;

namespace {

double pounds(double lb) { return lb * kg_per_lb; }
double buds(double first, double further, double kg) { return buds_for({first, further}, kg).buds; }

} // namespace

TEST_CASE("30+10 at 3 lb is 50 buds [wvda-grapes]") { CHECK(buds(30, 10, pounds(3)) == Approx(50)); }
TEST_CASE("20+20 at 1.5 lb is 30 buds [auburn-2021]") { CHECK(buds(20, 20, pounds(1.5)) == Approx(30)); }
TEST_CASE("30+10 at a little over one pound is 30 buds [odneal-2012]") {
    CHECK(whole_buds(buds(30, 10, pounds(1.00))) == 30);
    CHECK(whole_buds(buds(30, 10, pounds(1.04))) == 30);
}
TEST_CASE("30+10 at 4 lb is 60 buds [home-98905]") { CHECK(buds(30, 10, pounds(4)) == Approx(60)); }
TEST_CASE("20+20 at 2 lb is 40 buds [cooksplace-2013; formula smith-2023]") { CHECK(buds(20, 20, 0.907185) == near(40, 0.05)); }
TEST_CASE("20+10 at 2 lb is 30 buds and not 40: the first pound is not counted twice [finigan misreads it]") {
    CHECK(buds(20, 10, pounds(2)) == Approx(30));
}
TEST_CASE("20+10 at 3 lb, 30+10 at 2.5 lb, 14+10 at 1 kg [cortell-2012], computed") {
    CHECK(buds(20, 10, pounds(3)) == Approx(40));
    CHECK(buds(30, 10, pounds(2.5)) == Approx(45));
    CHECK(buds(14, 10, 1.0) == near(26.05, 0.05));
}
TEST_CASE("per 500 g: 33+11 and 66+11 at 1 kg are 44 and 77 [bates-2021], computed") {
    CHECK(buds_for({33, 11, 0.5, 0.5}, 1.0).buds == Approx(44));
    CHECK(buds_for({66, 11, 0.5, 0.5}, 1.0).buds == Approx(77));
}
TEST_CASE("55 for the first 500 g and 22 a further kilogram: 1.5 kg is 77 [trought-2017], computed") {
    CHECK(buds_for({55, 22, 0.5, 1.0}, 1.5).buds == Approx(77));
}
TEST_CASE("a small vine: pro rata, at least 8, flagged; both branches meet at a pound (our choice)") {
    CHECK(buds_for({30, 10}, pounds(0.5)).buds == Approx(15));
    CHECK(buds_for({30, 10}, pounds(0.5)).small_vine);
    CHECK(buds_for({20, 20}, pounds(0.3)).buds == Approx(8));
    CHECK(buds_for({20, 20}, pounds(0.3)).small_vine);
    CHECK(buds_for({30, 10}, pounds(1)).buds == Approx(30));
    CHECK_FALSE(buds_for({30, 10}, pounds(1)).small_vine);
    CHECK(buds_for({30, 10}, pounds(1 - 1e-7)).buds == near(30, 0.001));
}
TEST_CASE("the metric table of four formulas, computed to 0.05") {
    const double kg[] = {0.45359237, 0.6, 0.8, 1.0, 1.36078};
    const struct {
        double first, further, buds[5];
    } rows[] = {{30, 10, {30.00, 33.23, 37.64, 42.05, 50.00}},
                {20, 10, {20.00, 23.23, 27.64, 32.05, 40.00}},
                {20, 20, {20.00, 26.46, 35.27, 44.09, 60.00}},
                {60, 10, {60.00, 63.23, 67.64, 72.05, 80.00}}};
    for (const auto& row : rows)
        for (int k = 0; k < 5; ++k) CHECK(buds(row.first, row.further, kg[k]) == near(row.buds[k], 0.05));
}
TEST_CASE("by weight, by space and the smaller (our choice of space), computed") {
    const struct {
        double by_weight, spacing;
        int weight, low, house, high, smaller;
        Meeting meeting;
    } rows[] = {{buds(20, 20, 0.80), 1.8, 35, 22, 27, 31, 31, Meeting::above},
                {buds(20, 10, 0.80), 2.0, 28, 24, 30, 34, 28, Meeting::agree},
                {buds(20, 20, 0.30), 1.6, 13, 19, 24, 27, 13, Meeting::below},
                {charge(700, 35, 0.10), 1.5, 22, 18, 23, 26, 22, Meeting::agree}};
    for (const auto& row : rows) {
        const BudTarget t = bud_target(row.by_weight, row.spacing);
        CHECK(whole_buds(t.by_weight) == row.weight);
        CHECK(whole_buds(t.by_space.low) == row.low);
        CHECK(whole_buds(t.by_space.house) == row.house);
        CHECK(whole_buds(t.by_space.high) == row.high);
        CHECK(whole_buds(t.smaller) == row.smaller);
        CHECK(t.meeting == row.meeting);
    }
}
TEST_CASE("the charge of 800 g [wineskills-factors], computed") {
    const double cane[] = {40, 35, 30};
    const struct {
        double share, buds[3];
    } rows[] = {{0, {20.00, 22.86, 26.67}}, {0.10, {22.00, 25.14, 29.33}}, {0.05, {21.00, 24.00, 28.00}}, {0.15, {23.00, 26.29, 30.67}}};
    for (const auto& row : rows)
        for (int k = 0; k < 3; ++k) CHECK(charge(800, cane[k], row.share) == near(row.buds[k], 0.01));
    CHECK(charge_by_count(4, 10, 2, 2) == Approx(16));
}
TEST_CASE("effective shoots, nodes and next year's ratio [trought-2017], examples computed") {
    std::vector<double> canes(10, 12.0);
    canes.insert(canes.end(), 4, 8.0);
    canes.insert(canes.end(), 2, 16.0);
    canes.insert(canes.end(), 3, 6.0);
    CHECK(effective_shoots(canes) == Approx(16));
    CHECK(nodes_to_keep(16) == Approx(21));
    CHECK(effective_shoots({15.0, 10.0, 7.0, 6.9}) == Approx(2.5)); // ends are our choice
    CHECK(nodes_to_keep(effective_shoots({})) == Approx(5));
    CHECK(burst_of(18, 21) == Burst::blind);
    CHECK(burst_of(21, 21) == Burst::in_order);
    CHECK(burst_of(24, 21) == Burst::non_count);
}
TEST_CASE("a published formula names its work, a house's own none") {
    CHECK(source_of({20, 20}) == "smith-2023");
    CHECK(source_of({14, 10}) == "cortell-2012");
    CHECK(source_of({21, 20}).empty());
    CHECK(source_of({20, 20, 0.5, 0.5}).empty());
}
