// Choosing canes: what works say, and at which numbers our own bands turn.
#include <doctest/doctest.h>

#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_end_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/cane_side.h"
#include "sim/rules/internode_evenness.h"
#include "sim/rules/internode_length.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/wood_age.h"
#include "tests/rules/claims.h"

using namespace spurwright;
using namespace spurwright::rules;
using namespace spurwright::literals;
using test::claim_of;
using test::in_words;
using test::inch;

namespace {

const HouseRules house;

CaneFacts good_cane() {
    CaneFacts cane;
    cane.axis = AxisId{4};
    cane.side = Side::left;
    cane.count_buds = 10;
    cane.diameter = 9.0_mm;
    cane.mean_joint = 70.0_mm;
    cane.end_diameter = 7.0_mm;
    cane.distance_to_head = 60.0_mm;
    cane.below_wire = 120.0_mm;
    cane.off_row = 20.0_deg;
    return cane;
}

template <class Change>
CaneFacts with(Change change) {
    CaneFacts cane = good_cane();
    change(cane);
    return cane;
}

int diameter_mark(Length d, int ratio = 1100, Length joint = {70'000}) {
    return mark_cane_diameter(with([&](CaneFacts& c) { c.diameter = d, c.axis_ratio = {ratio}, c.mean_joint = joint; }),
                              house)
        .count;
}
int joint_mark(Length joint) {
    return mark_internode_length(with([&](CaneFacts& c) { c.mean_joint = joint; }), house).count;
}
int distance_mark(Length d) { return mark_origin_distance(d, std::nullopt, house).count; }
int height_mark(Length below) {
    return mark_origin_height(with([&](CaneFacts& c) { c.below_wire = below; }), house).count;
}
int side_mark(Angle off, Length over = {}) {
    return mark_cane_side(with([&](CaneFacts& c) { c.off_row = off, c.over_the_head = over; }), house).count;
}
template <class Change>
int health_mark(Change change) {
    return mark_cane_health(with([&](CaneFacts& c) { change(c.health); }), house).count;
}

TEST_SUITE("rules/cane-diameter") {
    const Band<Length> band = house.cane_diameter.band;

    TEST_CASE("a quarter to half an inch lies inside full and half [hellman-2019]") {
        const Claim& claim = claim_of(RuleName::cane_diameter, "hellman-2019");
        CHECK(claim.low == doctest::Approx(inch / 4));
        CHECK(claim.high == doctest::Approx(inch / 2));
        CHECK(in_mm(band.half.low) <= claim.low + 0.1);  // 6.4 is the quarter inch in tenths of a millimetre
        CHECK(claim.high <= in_mm(band.half.high));
    }
    TEST_CASE("five sixteenths to half an inch: full starts at its lower end [westover-2016]") {
        const Claim& claim = claim_of(RuleName::cane_diameter, "westover-2016");
        CHECK(claim.low == doctest::Approx(5 * inch / 16).epsilon(0.01));
        CHECK(claim.high == doctest::Approx(inch / 2));
        CHECK(in_mm(band.full.low) == doctest::Approx(claim.low).epsilon(0.02));
        CHECK(in_mm(band.full.high) <= claim.high);
    }
    TEST_CASE("a pencil, 8 mm, at least, is where full begins [winegrowers-info]") {
        CHECK(claim_of(RuleName::cane_diameter, "winegrowers-info").low == doctest::Approx(8.0));
        CHECK(diameter_mark(8.0_mm) == 1000);
    }
    TEST_CASE(
        "over half an inch and flat, or with joints of five inches, is bull and earns nothing [extension-bull-canes]") {
        const Claim& thick = claim_of(RuleName::cane_diameter, "extension-bull-canes");
        const Claim& joints = claim_of(RuleName::internode_length, "extension-bull-canes");
        CHECK(house.cane_diameter.bull_above == from_mm(thick.low));
        CHECK(house.cane_diameter.bull_joint == from_mm(joints.low));
        CHECK(joints.low == doctest::Approx(5 * inch));
        CHECK(joints.high == doctest::Approx(6 * inch));
        CHECK(diameter_mark(12.8_mm, 1300) == 0);
        CHECK(diameter_mark(12.8_mm, 1100, 127.0_mm) == 0);
        CHECK(diameter_mark(12.8_mm, 1100, 100.0_mm) == 600);  // round and short-jointed: a part
    }
    TEST_CASE("canes of 7.9 to 16.3 mm were studied, and our full band lies within them [eltom-2015]") {
        const Claim& claim = claim_of(RuleName::cane_diameter, "eltom-2015");
        CHECK(claim.low == doctest::Approx(7.9));
        CHECK(claim.high == doctest::Approx(16.3));
        CHECK(claim.low <= in_mm(band.full.low));
        CHECK(in_mm(band.full.high) <= claim.high);
    }
    TEST_CASE("thicker canes bear more, so thick round wood keeps a part [eltom-2014]") {
        CHECK(in_words(claim_of(RuleName::cane_diameter, "eltom-2014")));
        CHECK(diameter_mark(13.0_mm) > 0);
    }
    TEST_CASE("8 mm canes bear about 30 % fewer bunches than 11 mm: thinner than 8 loses [trought-2017]") {
        CHECK(in_words(claim_of(RuleName::cane_diameter, "trought-2017")));
        CHECK(diameter_mark(7.9_mm) < 1000);
    }
    TEST_CASE("8 to 12 mm costs nothing, 7.2 half, 13 half if round: our choice") {
        CHECK(diameter_mark(8.0_mm) == 1000);
        CHECK(diameter_mark(12.0_mm) == 1000);
        CHECK(diameter_mark({7'999}) == 999);
        CHECK(diameter_mark(7.6_mm) == 750);
        CHECK(diameter_mark(7.2_mm) == 500);
        CHECK(diameter_mark(6.4_mm) == 0);
        CHECK(diameter_mark(6.3_mm) == 0);
        CHECK(diameter_mark(12.5_mm, 1250) == 750);
        CHECK(diameter_mark(12.5_mm, 1251) == 0);  // not round
        CHECK(diameter_mark(13.0_mm, 1250) == 500);
        CHECK(diameter_mark(14.0_mm) == 0);
        CHECK(diameter_mark(14.1_mm) == 0);
        CHECK(diameter_mark(11.0_mm, 1400) == 1000);  // a flat cane of good thickness
    }
}

TEST_SUITE("rules/cane-end-diameter") {
    TEST_CASE("6 mm and more costs nothing, 5.5 half, under 5 all: our choice") {
        const auto mark = [](Length d) {
            return mark_cane_end_diameter(with([&](CaneFacts& c) { c.end_diameter = d; }), house).count;
        };
        CHECK(mark(6.0_mm) == 1000);
        CHECK(mark(12.0_mm) == 1000);
        CHECK(mark(5.64_mm) == 640);
        CHECK(mark(5.5_mm) == 500);
        CHECK(mark(5.0_mm) == 0);
        CHECK(mark(4.9_mm) == 0);
    }
    TEST_CASE("a cane of four count buds cannot be shortened any more") {
        CaneFacts cane = with([](CaneFacts& c) { c.end_diameter = 5.5_mm; });
        CHECK(say_cane_end_diameter(cane, house).if_lost == Mend::now);
        cane.count_buds = 4;
        CHECK(say_cane_end_diameter(cane, house).if_lost == Mend::next_winter);
    }
}

TEST_SUITE("rules/internode-length") {
    const Band<Length> band = house.internode_length;

    TEST_CASE("three to four inches lies inside full and half [hellman-2019]") {
        const Claim& claim = claim_of(RuleName::internode_length, "hellman-2019");
        CHECK(claim.low == doctest::Approx(3 * inch));
        CHECK(claim.high == doctest::Approx(4 * inch));
        CHECK(joint_mark(from_mm(claim.low)) == 1000);
        CHECK(joint_mark(from_mm(claim.high)) > 700);
    }
    TEST_CASE("60 mm costs nothing [wineskills-factors]") {
        CHECK(joint_mark(from_mm(claim_of(RuleName::internode_length, "wineskills-factors").low)) == 1000);
    }
    TEST_CASE(
        "60-70 mm give 15 shoots a metre, and 55 mm, 18 a metre, is tolerable: full starts there [sabrosia-2011]") {
        const Claim& best = claim_of(RuleName::internode_length, "sabrosia-2011");
        const Claim& tolerable = claim_of(RuleName::internode_length, "sabrosia-2011", 1);
        CHECK(1000 / best.high <= 15.0);
        CHECK(15.0 <= 1000 / best.low);
        CHECK(1000 / tolerable.low == doctest::Approx(18.2).epsilon(0.01));
        CHECK(in_mm(band.full.low) == doctest::Approx(tolerable.low));
        CHECK(joint_mark(from_mm(best.low)) == 1000);
        CHECK(joint_mark(from_mm(best.high)) == 1000);
    }
    TEST_CASE("joints of a bull cane, five inches and more, earn nothing [extension-bull-canes]") {
        const Claim& claim = claim_of(RuleName::internode_length, "extension-bull-canes");
        CHECK(in_mm(band.half.high) == doctest::Approx(claim.low));
        CHECK(joint_mark(from_mm(claim.low)) == 0);
        CHECK(joint_mark(from_mm(claim.high)) == 0);
    }
    TEST_CASE("cuttings have joints of 50 to 150 mm: our band is narrower [oxford-2006]") {
        const Claim& claim = claim_of(RuleName::internode_length, "oxford-2006");
        CHECK(claim.low <= in_mm(band.full.low));
        CHECK(in_mm(band.full.high) <= claim.high);
    }
    TEST_CASE("six inches is an outlier and earns nothing [grovida-mature]") {
        const Claim& claim = claim_of(RuleName::internode_length, "grovida-mature");
        CHECK(claim.low == doctest::Approx(6 * inch).epsilon(0.02));
        CHECK(joint_mark(from_mm(claim.low)) == 0);
    }
    TEST_CASE("55 to 95 mm costs nothing, 50 and 111 half, under 45 and over 127 all: our choice") {
        CHECK(joint_mark(55.0_mm) == 1000);
        CHECK(joint_mark(95.0_mm) == 1000);
        CHECK(joint_mark(50.0_mm) == 500);
        CHECK(joint_mark(111.0_mm) == 500);
        CHECK(joint_mark(45.0_mm) == 0);
        CHECK(joint_mark(44.0_mm) == 0);
        CHECK(joint_mark(127.0_mm) == 0);
        CHECK(joint_mark(128.0_mm) == 0);
    }
}

TEST_SUITE("rules/internode-evenness") {
    TEST_CASE("a variation of a quarter costs nothing, 0.40 all, and it carries no points: our choice") {
        const auto mark = [](int v) {
            return mark_internode_evenness(with([&](CaneFacts& c) { c.joint_variation = {v}; }), house).count;
        };
        CHECK(mark(250) == 1000);
        CHECK(mark(325) == 500);
        CHECK(mark(400) == 0);
        CHECK(mark(401) == 0);
        CHECK(house.weight(RuleName::internode_evenness) == 0);
    }
}

TEST_SUITE("rules/origin-distance") {
    TEST_CASE("close to the head is wanted, without a number [hellman-2019]") {
        CHECK(in_words(claim_of(RuleName::origin_distance, "hellman-2019")));
        CHECK(distance_mark(20.0_mm) > distance_mark(150.0_mm));
    }
    TEST_CASE("a well placed cane farther out may serve where none is near: it keeps a part [zabadal-2002]") {
        CHECK(in_words(claim_of(RuleName::origin_distance, "zabadal-2002")));
        CHECK(distance_mark(120.0_mm) > 0);
    }
    TEST_CASE("the upper cane of last year's spur stands well inside full [oenopedia-sap]") {
        CHECK(in_words(claim_of(RuleName::origin_distance, "oenopedia-sap")));
        CHECK(distance_mark(60.0_mm) == 1000);  // a spur of two joints of about 30 mm
    }
    TEST_CASE("80 mm costs nothing, 120 half, 160 and more all: our choice") {
        CHECK(distance_mark(80.0_mm) == 1000);
        CHECK(distance_mark(120.0_mm) == 500);
        CHECK(distance_mark(160.0_mm) == 0);
        CHECK(distance_mark(161.0_mm) == 0);
    }
    TEST_CASE("a house of slow arms asks how far the arm creeps, and never beyond 400 mm: our choice") {
        HouseRules slow;
        slow.origin_distance.measure = OriginMeasure::creep;
        slow.origin_distance.arm_to = 400.0_mm;
        CHECK(mark_origin_distance(350.0_mm, 60.0_mm, slow).count == 1000);
        CHECK(mark_origin_distance(350.0_mm, 120.0_mm, slow).count == 500);
        CHECK(mark_origin_distance(401.0_mm, 60.0_mm, slow).count == 0);
        CHECK(mark_origin_distance(120.0_mm, std::nullopt, slow).count == 500);  // no origin known: the distance
        CHECK(mark_origin_distance(350.0_mm, 60.0_mm, house).count == 0);        // a close head asks the distance
    }
}

TEST_SUITE("rules/origin-height") {
    TEST_CASE("100 to 250 mm below the wire: costs nothing to 200, half beyond [vineworks-spec]") {
        const Claim& claim = claim_of(RuleName::origin_height, "vineworks-spec");
        CHECK(height_mark(from_mm(claim.low)) == 1000);
        CHECK(height_mark(from_mm(claim.high)) == 500);
    }
    TEST_CASE("a crown 100 to 150 mm below costs nothing [coolclimate]") {
        const Claim& claim = claim_of(RuleName::origin_height, "coolclimate");
        CHECK(height_mark(from_mm(claim.low)) == 1000);
        CHECK(height_mark(from_mm(claim.high)) == 1000);
    }
    TEST_CASE("from below the lowest wire: above it earns nothing [lokkelebery]") {
        CHECK(claim_of(RuleName::origin_height, "lokkelebery").low == 0.0);
        CHECK(height_mark({-1}) == 0);
    }
    TEST_CASE("50 to 200 mm below costs nothing, 40 a fifth, deeper a half: our choice") {
        CHECK(height_mark(50.0_mm) == 1000);
        CHECK(height_mark(40.0_mm) == 800);
        CHECK(height_mark(0.0_mm) == 0);
        CHECK(height_mark(200.0_mm) == 1000);
        CHECK(height_mark({200'001}) == 500);
        CHECK(height_mark(900.0_mm) == 500);
        CHECK(say_origin_height(with([](CaneFacts& c) { c.below_wire = 260.0_mm; }), house).key.name ==
              "rule.origin-height.very-low");
        // No sucker is a spur, how low it may stand.
        CHECK(say_origin_height(with([](CaneFacts& c) { c.below_wire = 845.0_mm, c.sucker = c.rootstock = true; }), house).key.name ==
              "rule.origin-height.low");
    }
}

TEST_SUITE("rules/cane-side") {
    TEST_CASE("60 degrees costs nothing, 75 half, 90 and more all: our choice") {
        CHECK(side_mark(60.0_deg) == 1000);
        CHECK(side_mark(75.0_deg) == 500);
        CHECK(side_mark(90.0_deg) == 0);
        CHECK(side_mark(91.0_deg) == 0);
        CHECK(side_mark(160.0_deg) == 0);
    }
    TEST_CASE("a base more than 60 mm over crosses the head, unless the house allows it: our choice") {
        CHECK(side_mark(20.0_deg, 60.0_mm) == 1000);
        CHECK(side_mark(20.0_deg, 61.0_mm) == 0);
        HouseRules brittle;
        brittle.cane_side.over_the_head = true;
        CHECK(mark_cane_side(with([](CaneFacts& c) { c.over_the_head = 61.0_mm; }), brittle).count == 1000);
    }
}

TEST_SUITE("rules/wood-age") {
    TEST_CASE("older wood is not laid [hellman-tamu]") {
        CHECK(in_words(claim_of(RuleName::wood_age, "hellman-tamu")));
        CHECK(mark_wood_age(with([](CaneFacts& c) { c.wood_age = 2; })).count == 0);
        CHECK(mark_wood_age(good_cane()).count == 1000);
    }
    TEST_CASE("the ages are told apart by bark, so a person can see what is judged [hickey-psu] [wvda-grapes]") {
        CHECK(in_words(claim_of(RuleName::wood_age, "hickey-psu")));
        CHECK(in_words(claim_of(RuleName::wood_age, "wvda-grapes")));
    }
}

TEST_SUITE("rules/cane-health") {
    TEST_CASE("firm brown wood, healthy buds, no wound, no disease: anything else costs [hellman-2019]") {
        CHECK(in_words(claim_of(RuleName::cane_health, "hellman-2019")));
        CHECK(health_mark([](HealthFacts&) {}) == 1000);
        CHECK(health_mark([](HealthFacts& h) { h.spot = true; }) == 0);
        CHECK(health_mark([](HealthFacts& h) { h.wound = true; }) == 0);
        CHECK(health_mark([](HealthFacts& h) { h.dead_buds = 1; }) < 1000);
        CHECK(health_mark([](HealthFacts& h) { h.ripe_share = {990}; }) < 1000);
    }
    TEST_CASE("spots, poor ripening and twinning are rejected or cost [wineskills-factors]") {
        CHECK(in_words(claim_of(RuleName::cane_health, "wineskills-factors")));
        CHECK(health_mark([](HealthFacts& h) { h.twin = true; }) < 1000);
        CHECK(health_mark([](HealthFacts& h) { h.ripe_share = {700}; }) == 0);
    }
    TEST_CASE("one dead bud or half a double cane costs half, two dead buds or a crack all: our choice") {
        CHECK(health_mark([](HealthFacts& h) { h.dead_buds = 1; }) == 500);
        CHECK(health_mark([](HealthFacts& h) { h.dead_buds = 2; }) == 0);
        CHECK(health_mark([](HealthFacts& h) { h.twin = true; }) == 500);
        CHECK(health_mark([](HealthFacts& h) { h.cracked = true; }) == 0);
        CHECK(health_mark([](HealthFacts& h) { h.ripe_share = {900}; }) == 500);
        CHECK(health_mark([](HealthFacts& h) { h.ripe_share = {800}; }) == 0);
    }
    TEST_CASE("the gravest thing is the one said") {
        const auto key = [](auto change) {
            return say_cane_health(with([&](CaneFacts& c) { change(c.health); }), house).key.name;
        };
        CHECK(key([](HealthFacts& h) { h.twin = true, h.spot = true; }) == "rule.cane-health.spot");
        CHECK(key([](HealthFacts& h) { h.twin = true, h.ripe_share = {820}; }) == "rule.cane-health.unripe-end");
        CHECK(key([](HealthFacts& h) { h.twin = true, h.ripe_share = {980}; }) == "rule.cane-health.twin");
        CHECK(key([](HealthFacts&) {}) == "rule.cane-health.full");
    }
}

}  // namespace
