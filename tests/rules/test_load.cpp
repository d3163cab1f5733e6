// How much is left: buds, reach, canes.
#include <doctest/doctest.h>

#include "sim/rules/bud_load.h"
#include "sim/rules/cane_count.h"
#include "sim/rules/cane_reach.h"
#include "sim/rules/piece_points.h"
#include "tests/rules/claims.h"

using namespace spurwright;
using namespace spurwright::rules;
using namespace spurwright::literals;
using test::claim_of;
using test::in_words;

namespace {

const HouseRules house;
constexpr Length usual{1'800'000};

int load_mark(int counted, int all, Length spacing = usual, const HouseRules& rules = house) {
    return mark_bud_load({counted, 0, all, spacing}, rules).count;
}
int load_mark(int buds) { return load_mark(buds, buds); }

int reach_mark(Length free_wire, bool short_load = false, bool more = false) {
    CaneFacts cane;
    cane.free_wire = free_wire;
    cane.more_ripe_wood = more;
    return mark_cane_reach(cane, house, short_load).count;
}

TEST_SUITE("rules/bud-load") {
    const double per_m = house.bud_load.per_metre;
    const double full_low = house.bud_load.density.full.low.count / 1000.0,
                 full_high = house.bud_load.density.full.high.count / 1000.0;

    TEST_CASE("15 shoots a metre [wineskills-shape]") {
        CHECK(claim_of(RuleName::bud_load, "wineskills-shape").low == per_m);
    }
    TEST_CASE("15 shoots a metre [sabrosia-2011]") {
        CHECK(claim_of(RuleName::bud_load, "sabrosia-2011").low == per_m);
    }
    TEST_CASE("15 shoots a metre [sabbatini]") { CHECK(claim_of(RuleName::bud_load, "sabbatini").low == per_m); }
    TEST_CASE("about four a foot and under 15 a metre lies inside full [smart-2013]") {
        const Claim& claim = claim_of(RuleName::bud_load, "smart-2013");
        CHECK(claim.low == doctest::Approx(4 * test::foot_per_metre).epsilon(0.01));
        CHECK(full_low <= claim.low);
        CHECK(claim.high <= full_high);
    }
    TEST_CASE("4 to 6 buds a foot: our bands start at it and end at it [smith-2023]") {
        const Claim& claim = claim_of(RuleName::bud_load, "smith-2023");
        CHECK(claim.low == doctest::Approx(4 * test::foot_per_metre).epsilon(0.01));
        CHECK(claim.high == doctest::Approx(6 * test::foot_per_metre).epsilon(0.01));
        CHECK(full_low <= claim.low);
        CHECK(claim.high <= house.bud_load.density.half.high.count / 1000.0);
    }
    TEST_CASE("5 shoots a foot in the end lies inside full [houseofvines]") {
        const Claim& claim = claim_of(RuleName::bud_load, "houseofvines");
        CHECK(claim.low == doctest::Approx(5 * test::foot_per_metre).epsilon(0.01));
        CHECK(claim.low <= full_high);
    }
    TEST_CASE("15 buds a metre in a yield example [horticulture-ppp]") {
        CHECK(claim_of(RuleName::bud_load, "horticulture-ppp").low == per_m);
    }
    TEST_CASE("36 to 40 buds on 1.8 m are 20 and more a metre: over our bands, the house may set its own target "
              "[naylor-nz]") {
        const Claim& claim = claim_of(RuleName::bud_load, "naylor-nz");
        CHECK(claim.low == doctest::Approx(36 / 1.8));
        CHECK(claim.high == doctest::Approx(40 / 1.8).epsilon(0.01));
        CHECK(load_mark(36) == 0);
        HouseRules theirs;
        theirs.bud_load.target = 38;
        CHECK(load_mark(38, 38, usual, theirs) == 1000);
    }
    TEST_CASE(
        "when in doubt too few rather than too many: no buds too many are forgiven for buds too few [zabadal-2002]") {
        CHECK(in_words(claim_of(RuleName::bud_load, "zabadal-2002")));
        CHECK(load_mark(24) >= load_mark(30));  // 3 under and 3 over
    }
    TEST_CASE("spur buds are in the total [home-98905]") {
        CHECK(in_words(claim_of(RuleName::bud_load, "home-98905")));
        CHECK(mark_bud_load({23, 4, 27, usual}, house).count == 1000);
        CHECK(mark_bud_load({23, 0, 23, usual}, house).count < 1000);
    }
    TEST_CASE("the target is 15 a metre, halves up: our choice") {
        const auto target = [](int um) { return target_buds(house, {um}); };
        CHECK(target(1'200'000) == 18);
        CHECK(target(1'500'000) == 23);
        CHECK(target(1'800'000) == 27);
        CHECK(target(2'100'000) == 32);
        CHECK(target(2'400'000) == 36);
    }
    TEST_CASE("within a tenth costs nothing, a fifth off all: our choice") {
        CHECK(load_mark(25) == 1000);
        CHECK(load_mark(29) == 1000);
        CHECK(load_mark(24) == 888);
        CHECK(load_mark(30) == 888);
        CHECK(load_mark(22) == 148);
        CHECK(load_mark(21) == 0);
        CHECK(load_mark(33) == 0);
        CHECK(load_mark(0) == 0);
    }
    TEST_CASE("12 to 17 a metre costs nothing beside the target from the space: our choice") {
        CHECK(load_mark(10, 10, {600'000}) == 888);   // 16.7 a metre is full, the target of 9 is not
        CHECK(load_mark(11, 11, {650'000}) == 1000);  // target 10, 16.9 a metre
        HouseRules wide;
        wide.bud_load.per_metre = 18;
        CHECK(load_mark(32, 32, usual, wide) == 741);  // on target, 17.8 a metre: (20 - 17.777) / 3
        wide.bud_load.target = 32;                     // a number of its own: the density is only said
        CHECK(load_mark(32, 32, usual, wide) == 1000);
    }
    TEST_CASE("pieces beyond one cane and one spur a side count against, never for") {
        CHECK(load_mark(20, 27) == load_mark(20));
        CHECK(load_mark(27, 40) == 0);
        CHECK(load_mark(27, 28) == 1000);
    }
    TEST_CASE("what is said names the side that was lost") {
        const auto key = [](int counted, int all) { return say_bud_load({counted, 0, all, usual}, house).key.name; };
        CHECK(key(27, 27) == "rule.bud-load.full");
        CHECK(key(23, 23) == "rule.bud-load.few");
        CHECK(key(9, 9) == "rule.bud-load.too-few");
        CHECK(key(0, 0) == "rule.bud-load.nothing");
        CHECK(key(0, 505) == "rule.bud-load.too-many");
        CHECK(key(31, 31) == "rule.bud-load.many");
        CHECK(key(25, 60) == "rule.bud-load.too-many");
        CHECK(key(9, 20) == "rule.bud-load.too-few");
        CHECK(say_bud_load({23, 0, 23, usual}, house).if_lost == Mend::next_winter);
        CHECK(say_bud_load({31, 0, 31, usual}, house).if_lost == Mend::now);
    }
    TEST_CASE("far too many is more than one and a half times the target: our choice") {
        CHECK_FALSE(overloaded(27, 18, house));
        CHECK(overloaded(28, 18, house));
        CHECK(short_load(16, 18, house));
        CHECK_FALSE(short_load(18 * 9 / 10 + 1, 18, house));
        CHECK_FALSE(short_load(9, 10, house));  // nine tenths are not short
    }
}

TEST_SUITE("rules/cane-reach") {
    TEST_CASE("about 100 mm between cane ends costs nothing [naylor-nz]") {
        CHECK(reach_mark(from_mm(claim_of(RuleName::cane_reach, "naylor-nz").low), true, true) == 1000);
    }
    TEST_CASE("a hand's width costs nothing [westover-2016]") {
        CHECK(in_words(claim_of(RuleName::cane_reach, "westover-2016")));
        CHECK(reach_mark(100.0_mm, true, true) == 1000);  // about 100 mm with the thumb (memory)
    }
    TEST_CASE(
        "canes that just meet do not overlap, and still earn nothing here: our choice beside it [vinsanity-2013]") {
        CHECK(claim_of(RuleName::cane_reach, "vinsanity-2013").low == 0.0);
        CHECK(reach_mark({0}) == 0);
        CHECK(reach_mark(25.0_mm) == 500);
    }
    TEST_CASE("no bare gap where wood was there for more [todaro-tying]") {
        CHECK(in_words(claim_of(RuleName::cane_reach, "todaro-tying")));
        CHECK(reach_mark(400.0_mm, true, true) == 0);
    }
    TEST_CASE("an overlap earns nothing, whatever the load: our choice") {
        CHECK(reach_mark({-1}) == 0);
        CHECK(reach_mark({-1}, true, true) == 0);
    }
    TEST_CASE("a gap is a fault only where the load is short and ripe wood for more was there: our choice") {
        CHECK(reach_mark(50.0_mm) == 1000);
        CHECK(reach_mark(150.0_mm, true, true) == 1000);
        CHECK(reach_mark(225.0_mm, true, true) == 500);
        CHECK(reach_mark(300.0_mm, true, true) == 0);
        CHECK(reach_mark(900.0_mm, false, true) == 1000);
        CHECK(reach_mark(900.0_mm, true, false) == 1000);
    }
    TEST_CASE("a shorter or longer end of wood earns neither room nor a smaller gap: our choice") {
        CaneFacts cane;
        cane.free_wire = 60.0_mm;  // cut 4 mm beyond its bud
        cane.usual_free_wire = 44.0_mm;
        CHECK(mark_cane_reach(cane, house, false).count == 880);
        CHECK(say_cane_reach(cane, house, false).key.name == "rule.cane-reach.usual-close");
        cane.free_wire = {-20'000};  // a peg runs past the neighbour
        CHECK(mark_cane_reach(cane, house, false).count == 0);
        CHECK(say_cane_reach(cane, house, false).key.name == "rule.cane-reach.overlap");
        cane.more_ripe_wood = true;
        cane.free_wire = 150.0_mm;  // cut through the next node to come nearer
        cane.usual_free_wire = 200.0_mm;
        CHECK(mark_cane_reach(cane, house, true).count == 666);
        CHECK(say_cane_reach(cane, house, true).key.name == "rule.cane-reach.usual-gap");
        CHECK(mark_cane_reach(cane, house, false).count == 1000);
    }
    TEST_CASE("without a neighbour the sentence speaks of the cane's own space") {
        CaneFacts cane;
        cane.free_wire = 220.0_mm;
        CHECK(say_cane_reach(cane, house, false).key.name == "rule.cane-reach.gap-enough");
        cane.room = 600.0_mm;
        CHECK(say_cane_reach(cane, house, false).key.name == "rule.cane-reach.gap-enough-room");
        CHECK(say_cane_reach(cane, house, true).key.name == "rule.cane-reach.gap-no-wood-room");
    }
}

Asked asking(bool left, bool right) {
    Offers offers;
    if (left) offers.sides[0].canes = {AxisId{4}};
    if (right) offers.sides[1].canes = {AxisId{7}};
    return asked(offers, house);
}

TEST_SUITE("rules/cane-count") {
    TEST_CASE("two canes [vineworks-spec]") {
        CHECK(claim_of(RuleName::cane_count, "vineworks-spec").low == house.cane_count.wanted);
    }
    TEST_CASE("two lies within two to four [naylor-nz], one to four [epee-2022], two to six [greven-2014]") {
        for (const std::string_view key : {"naylor-nz", "epee-2022", "greven-2014"}) {
            const Claim& claim = claim_of(RuleName::cane_count, key);
            CHECK(claim.low <= house.cane_count.wanted);
            CHECK(house.cane_count.wanted <= claim.high);
        }
    }
    TEST_CASE("each asked side full with one cane; a cane too many takes one side's mark: our choice") {
        const auto marks = [](PairFacts pair, bool left, bool right) {
            const auto m = marks_cane_count(pair, asking(left, right));
            return std::array{m[0].count, m[1].count};
        };
        CHECK(marks({{true, true}, {0, 0}, false}, true, true) == std::array{1000, 1000});
        CHECK(marks({{true, false}, {0, 0}, false}, true, true) == std::array{1000, 0});
        CHECK(marks({{true, true}, {1, 0}, false}, true, true) == std::array{0, 1000});
        CHECK(marks({{true, true}, {2, 0}, false}, true, true) == std::array{0, 0});
        CHECK(marks({{true, false}, {1, 0}, false}, true, true) == std::array{0, 0});
        CHECK(marks({{false, true}, {0, 0}, false}, false, true) == std::array{0, 1000});
        CHECK(marks({{true, true}, {0, 0}, false}, false, true) ==
              std::array{0, 0});  // one on a side that asks for none
    }
}

}  // namespace
