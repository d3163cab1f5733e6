// Spurs: number, buds, place, size.
#include <doctest/doctest.h>

#include "sim/rules/spur_buds.h"
#include "sim/rules/spur_count.h"
#include "sim/rules/spur_place.h"
#include "sim/rules/spur_size.h"
#include "tests/rules/claims.h"

using namespace spurwright;
using namespace spurwright::rules;
using namespace spurwright::literals;
using test::claim_of;
using test::in_words;

namespace {

const HouseRules house;

int buds_mark(int buds) {
    SpurFacts spur;
    spur.count_buds = buds;
    return mark_spur_buds(spur, house).count;
}
int size_mark(Length d, HealthFacts health = {}) {
    SpurFacts spur;
    spur.first_joint_diameter = d;
    spur.health = health;
    return mark_spur_size(spur, house).count;
}
int alone(Length below) { return mark_spur_place({{below, 50.0_mm}, std::nullopt}, house).count; }
// A spur 150 mm below the wire, this much lower and nearer than its cane.
int beside(Length lower, Length nearer) {
    return mark_spur_place({{150.0_mm, 50.0_mm}, SpurPlaceFacts::Base{150.0_mm - lower, 50.0_mm + nearer}}, house)
        .count;
}

TEST_SUITE("rules/spur-count") {
    TEST_CASE("two spurs [vineworks-spec]") {
        CHECK(claim_of(RuleName::spur_count, "vineworks-spec").low == house.spur_count.wanted);
    }
    TEST_CASE("one either side [epee-2022]") { CHECK(claim_of(RuleName::spur_count, "epee-2022").low == 2.0); }
    TEST_CASE("none is allowed where a basal cane is taken instead: a side without another spur is not asked "
              "[hellman-2019]") {
        CHECK(claim_of(RuleName::spur_count, "hellman-2019").low == 0.0);
        Offers offers;
        offers.sides[0].canes = offers.sides[0].spurs = {AxisId{4}};
        CHECK_FALSE(asked(offers, house).spur[0]);
        offers.sides[0].spurs.push_back(AxisId{5});
        CHECK(asked(offers, house).spur[0]);
    }
    TEST_CASE("the number depends on vine and preference, so the house may turn the rule off [eltom-2015]") {
        CHECK(in_words(claim_of(RuleName::spur_count, "eltom-2015")));
        HouseRules without;
        without.weighed[rules::index_of(RuleName::spur_count)].on = false;
        Offers offers;
        offers.sides[0].canes = {AxisId{4}, AxisId{5}};
        offers.sides[0].spurs = {AxisId{6}};
        CHECK(asked(offers, without).per_spur[rules::index_of(RuleName::spur_count)] == Tenths{0});
        CHECK(asked(offers, without).total() == Tenths{1000});
    }
    TEST_CASE("the first spur too many takes one side's mark, the second both: our choice") {
        Offers offers;
        for (auto& side : offers.sides) side.canes = {AxisId{4}, AxisId{5}}, side.spurs = {AxisId{6}};
        const Asked asks = asked(offers, house);
        const auto marks = [&](std::array<bool, 2> spur, std::array<int, 2> more) {
            const auto m = marks_spur_count(spur, more, asks);
            return std::array{m[0].count, m[1].count};
        };
        CHECK(marks({true, true}, {0, 0}) == std::array{1000, 1000});
        CHECK(marks({true, false}, {0, 0}) == std::array{1000, 0});
        CHECK(marks({true, true}, {0, 1}) == std::array{1000, 0});
        CHECK(marks({true, true}, {0, 2}) == std::array{0, 0});
        CHECK(marks({true, false}, {1, 0}) == std::array{0, 0});
    }
}

TEST_SUITE("rules/spur-buds") {
    TEST_CASE("one or two buds cost nothing [hellman-2019]") {
        const Claim& claim = claim_of(RuleName::spur_buds, "hellman-2019");
        CHECK(buds_mark(static_cast<int>(claim.low)) == 1000);
        CHECK(buds_mark(static_cast<int>(claim.high)) == 1000);
    }
    TEST_CASE("two buds cost nothing [bourgogne-cane] [oxford-2006]") {
        for (const std::string_view key : {"bourgogne-cane", "oxford-2006"})
            CHECK(buds_mark(static_cast<int>(claim_of(RuleName::spur_buds, key).low)) == 1000);
    }
    TEST_CASE("three-bud spurs have more blind nodes: they lose [epee-2022]") {
        CHECK(in_words(claim_of(RuleName::spur_buds, "epee-2022")));
        CHECK(buds_mark(3) == 500);
    }
    TEST_CASE("none and four earn nothing: our choice") {
        CHECK(buds_mark(0) == 0);
        CHECK(buds_mark(4) == 0);
    }
}

TEST_SUITE("rules/spur-place") {
    TEST_CASE("100 to 250 mm below the wire costs nothing [vineworks-spec]") {
        const Claim& claim = claim_of(RuleName::spur_place, "vineworks-spec");
        CHECK(house.spur_place.below.low == from_mm(claim.low));
        CHECK(house.spur_place.below.high == from_mm(claim.high));
        CHECK(alone(from_mm(claim.low)) == 1000);
        CHECK(alone(from_mm(claim.high)) == 1000);
    }
    TEST_CASE("below and more central than its cane [zabadal-2002]") {
        CHECK(in_words(claim_of(RuleName::spur_place, "zabadal-2002")));
        CHECK(beside(20.0_mm, 20.0_mm) == 1000);
        CHECK(beside(-20.0_mm, 20.0_mm) == 0);
        CHECK(beside(20.0_mm, -20.0_mm) == 0);
    }
    TEST_CASE("the lower of a spur's two canes makes the next spur [oenopedia-sap]") {
        CHECK(in_words(claim_of(RuleName::spur_place, "oenopedia-sap")));
        CHECK(beside(30.0_mm, 30.0_mm) > beside(-30.0_mm, -30.0_mm));
    }
    TEST_CASE("within 10 mm is level and earns half; the smallest of the three counts: our choice") {
        CHECK(beside(10.0_mm, 20.0_mm) == 500);
        CHECK(beside({10'001}, 20.0_mm) == 1000);
        CHECK(beside(20.0_mm, -10.0_mm) == 500);
        CHECK(beside(20.0_mm, {-10'001}) == 0);
        CHECK(alone(50.0_mm) == 500);
        CHECK(alone(69.0_mm) == 690);
        CHECK(alone(0.0_mm) == 0);
        CHECK(alone({-1}) == 0);
        CHECK(alone(251.0_mm) == 500);
        CHECK(mark_spur_place({{50.0_mm, 50.0_mm}, SpurPlaceFacts::Base{20.0_mm, 90.0_mm}}, house).count == 500);
    }
    TEST_CASE("what is said names the smallest of the three") {
        const auto key = [](SpurPlaceFacts place) { return say_spur_place(place, AxisId{6}, house).key.name; };
        CHECK(key({{150.0_mm, 50.0_mm}, SpurPlaceFacts::Base{120.0_mm, 90.0_mm}}) == "rule.spur-place.full");
        CHECK(key({{150.0_mm, 50.0_mm}, std::nullopt}) == "rule.spur-place.alone-full");
        CHECK(key({{150.0_mm, 50.0_mm}, SpurPlaceFacts::Base{180.0_mm, 90.0_mm}}) == "rule.spur-place.higher");
        CHECK(key({{150.0_mm, 50.0_mm}, SpurPlaceFacts::Base{120.0_mm, 20.0_mm}}) == "rule.spur-place.farther");
        CHECK(key({{30.0_mm, 50.0_mm}, SpurPlaceFacts::Base{10.0_mm, 90.0_mm}}) == "rule.spur-place.near");
        CHECK(key({{-5.0_mm, 50.0_mm}, std::nullopt}) == "rule.spur-place.above");
    }
}

TEST_SUITE("rules/spur-size") {
    TEST_CASE("a quarter inch, said of canes, is where a spur costs nothing [hellman-2019]") {
        const Claim& claim = claim_of(RuleName::spur_size, "hellman-2019");
        CHECK(claim.low == doctest::Approx(test::inch / 4));
        CHECK(in_mm(house.spur_size.full_from) == doctest::Approx(claim.low).epsilon(0.01));
    }
    TEST_CASE("thin wood is the commonest mistake: it loses [westover-2016]") {
        CHECK(in_words(claim_of(RuleName::spur_size, "westover-2016")));
        CHECK(size_mark(5.7_mm) < 1000);
    }
    TEST_CASE("6.4 mm costs nothing, 5.7 half, under 5 and unsound all: our choice") {
        CHECK(size_mark(6.4_mm) == 1000);
        CHECK(size_mark(6.2_mm) == 857);
        CHECK(size_mark(5.7_mm) == 500);
        CHECK(size_mark(5.0_mm) == 0);
        CHECK(size_mark(4.9_mm) == 0);
        HealthFacts spotted, wounded, dead;
        spotted.spot = wounded.wound = true;
        dead.dead_buds = 1;
        for (const HealthFacts& health : {spotted, wounded, dead}) CHECK(size_mark(9.0_mm, health) == 0);
    }
}

}  // namespace
