// What is asked only where a house asks for it: the direction of spurs, kickers and spares, buds for those killed, the weight
// of the prunings.
#include <doctest/doctest.h>

#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/bud_load.h"
#include "sim/rules/kickers.h"
#include "sim/rules/measure_plan.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/prunings_weighed.h"
#include "sim/rules/spur_direction.h"
#include "tests/rules/claims.h"

using namespace spurwright;
using namespace spurwright::rules;
using namespace spurwright::literals;
using test::claim_of;
using test::in_words;

namespace {

const HouseRules general;

int direction(Angle off, Points bud, FirstBud wanted = FirstBud::out_or_down) {
    HouseRules house;
    house.spur_direction.first_bud = wanted;
    SpurFacts spur;
    spur.off_row_plane = off;
    spur.first_bud = bud;
    return mark_spur_direction(spur, house).count;
}

int kept(std::size_t whole_ones, std::size_t spoilt, int wanted) {
    HouseRules house;
    house.standing.kickers = wanted;
    StandingFacts is;
    is.kickers.resize(whole_ones);
    is.spoilt.resize(spoilt);
    return mark_kicker_kept(is, house).count;
}

int absent(int forgotten, int cut, int early, int spares) {
    HouseRules house;
    house.standing.spares = spares;
    StandingFacts is;
    is.forgotten = forgotten;
    is.spares_cut = cut;
    is.spares_early = early;
    return mark_kicker_absent(is, house).count;
}

int weighed(double grams, double bundle) {
    WeighingFacts is;
    is.report = Report{Mass{static_cast<std::int32_t>(grams * 1000)}, true};
    is.bundle = Mass{static_cast<std::int32_t>(bundle * 1000)};
    return mark_prunings_weighed(is, general).count;
}

TEST_SUITE("rules/spur-direction") {
    TEST_CASE("first bud down or outward, in the line of the row [monviti-guyot, prieure-roch]") {
        CHECK(in_words(claim_of(RuleName::spur_direction, "monviti-guyot")));
        CHECK(in_words(claim_of(RuleName::spur_direction, "prieure-roch")));
        CHECK(direction({0}, Points::outward) == 1000);
        CHECK(direction({45'000}, Points::down) == 1000);
        CHECK(direction({45'001}, Points::down) == 0);
        for (const Points other : {Points::up, Points::inward, Points::across}) CHECK(direction({0}, other) == 500);
    }
    TEST_CASE("another house wants the first bud up (our choice)") {
        CHECK(direction({0}, Points::up, FirstBud::up) == 1000);
        CHECK(direction({0}, Points::outward, FirstBud::up) == 500);
        CHECK(direction({90'000}, Points::up, FirstBud::up) == 0);
    }
    TEST_CASE("it is off, and has no weight, unless a house turns it on") {
        CHECK_FALSE(general.of(RuleName::spur_direction).on);
        CHECK(general.weight(RuleName::spur_direction) == 0);
        SpurFacts across;
        across.off_row_plane = {46'000};
        CHECK(stands_across(across, general));
    }
}

TEST_SUITE("rules/kickers") {
    TEST_CASE("a cane kept upright and uncut until frost is over, then taken off [vineworks-frost]") {
        CHECK(in_words(claim_of(RuleName::kicker_kept, "vineworks-frost")));
        CHECK(kept(1, 0, 1) == 1000);
        CHECK(kept(0, 1, 1) == 500);  // shortened or tied
        CHECK(kept(0, 0, 1) == 0);
        HouseRules after;
        after.standing.kickers = 1;
        after.standing.frost_over = true;
        CHECK(mark_kicker_kept({}, after) == full_mark);
        StandingFacts late;
        late.late = 1;
        CHECK(mark_kicker_kept(late, after) == no_mark);
        CHECK(say_kicker_kept(late, after).key.name == "rule.kicker-kept.late");
    }
    TEST_CASE("two beside four tied [jones-2012]: one too few of two is part") {
        CHECK(claim_of(RuleName::kicker_kept, "jones-2012").low == 2.0);
        CHECK(kept(2, 0, 2) == 1000);
        CHECK(kept(1, 0, 2) == 500);
        CHECK(kept(1, 1, 2) == 500);
        CHECK(kept(0, 0, 2) == 0);
    }
    TEST_CASE("one cane forgotten, or a spare cut too early, is part; two are none (our choice)") {
        CHECK(in_words(claim_of(RuleName::kicker_absent, "pwv-2009")));
        CHECK(absent(0, 0, 0, 0) == 1000);
        CHECK(absent(1, 0, 0, 0) == 500);
        CHECK(absent(2, 0, 0, 0) == 0);
        CHECK(absent(0, 1, 0, 1) == 1000);
        CHECK(absent(0, 1, 1, 1) == 500);  // before the last tie
        CHECK(absent(0, 0, 0, 1) == 500);  // none was kept
        CHECK(absent(1, 0, 0, 1) == 0);
    }
    TEST_CASE("asked only where wanted, and where enough canes stand whatever two canes and two spurs are kept") {
        HouseRules house;
        house.standing.kickers = 1;
        Offers offers;
        for (std::uint32_t id = 1; id <= 5; ++id) {
            offers.standing.push_back(AxisId{id});
            const Asked asks = asked(offers, house);
            CHECK(asks.kickers == (id == 5));
            CHECK((asks.of_vine(RuleName::kicker_kept).count > 0) == (id == 5));
            CHECK(asks.total() == Tenths{1000});
        }
        CHECK_FALSE(asked(offers, general).kickers);
        CHECK(asked(offers, general).of_vine(RuleName::kicker_absent) == Tenths{});
        house.standing.spares = 1;
        CHECK_FALSE(asked(offers, house).spares);  // six are needed now
    }
    TEST_CASE("a spare cut before the last tie is told from one that waited") {
        const auto early = [](const Plan& plan) {
            PlanFacts facts;
            facts.standing.spares_cut = 1;
            note_order(facts, plan);
            return facts.standing.spares_early;
        };
        const Edit mark = Mark{AxisId{7}, Role::spare}, cut = Cut{node_id(AxisId{7}, 0), Length{8'000}, Tool::shears, {}},
                   tie = Fasten{node_id(AxisId{4}, 5), Length{15'000}, true};
        CHECK(early({{mark, tie, cut}}) == 0);
        CHECK(early({{mark, cut, tie}}) == 1);
        CHECK(early({{tie, cut}}) == 0);
    }
}

TEST_SUITE("rules/bud-kill-adjust") {
    HouseRules killed(std::int32_t per_mille) {
        HouseRules house;
        house.bud_kill.killed = {per_mille};
        return house;
    }
    TEST_CASE("a third killed, a third more buds [cornell-nny-2014]; from 15 % on in another school [purdue-double]; more canes [zabadal-2002]") {
        const Claim& claim = claim_of(RuleName::bud_kill_adjust, "cornell-nny-2014");
        CHECK(claim.low == 0.2);
        CHECK(general.bud_kill.from.count == 1000 * claim.low);
        CHECK(claim_of(RuleName::bud_kill_adjust, "purdue-double").low == 0.15);
        CHECK(in_words(claim_of(RuleName::bud_kill_adjust, "zabadal-2002")));
        HouseRules house = killed(350);
        house.bud_load.target = 20;
        CHECK(target_buds(house, Length{}) == 27);  // 20 x 1.35, the work's own factor
        CHECK(usual_target_buds(house, Length{}) == 20);
    }
    TEST_CASE("under the limit nothing changes, from it on the target does (fixture BK-7)") {
        for (const auto& [per_mille, target] : {std::pair{0, 24}, {199, 24}, {200, 29}, {500, 36}}) {
            const int share = per_mille;  // a binding cannot be captured
            HouseRules house = killed(share);
            house.bud_load.target = 24;
            CAPTURE(share);
            CHECK(target_buds(house, Length{}) == target);
            CHECK(adjusts_for_bud_kill(house) == (share >= 200));
        }
    }
    TEST_CASE("the usual number of buds is too few where a third is dead, and the density is no mark then") {
        const HouseRules house = killed(350);
        const Length spacing{1'800'000};
        REQUIRE(target_buds(house, spacing) == 36);
        const LoadFacts usual{23, 4, 27, spacing}, more{32, 4, 36, spacing};
        CHECK(mark_bud_kill_adjust(usual, house) == no_mark);
        CHECK(mark_bud_load(usual, house) == no_mark);
        CHECK(mark_bud_kill_adjust(more, house) == full_mark);
        CHECK(mark_bud_load(more, house) == full_mark);
        CHECK(mark_bud_load(more, general) < full_mark);
        CHECK(say_bud_kill_adjust(usual, house).key.name == "rule.bud-kill-adjust.few");
    }
    TEST_CASE("beyond four fifths no number can be given") {
        CHECK(first_fault(killed(801))->rule == "bud-kill-adjust");
        CHECK_FALSE(first_fault(killed(800)));
    }
}

TEST_SUITE("rules/prunings-weighed") {
    TEST_CASE("one-year wood only [fiola-2021, cornell-fifteen, venesemprendedores], at pruning [taylor-2012]") {
        for (const char* key : {"fiola-2021", "cornell-fifteen", "venesemprendedores", "taylor-2012"})
            CHECK(in_words(claim_of(RuleName::prunings_weighed, key)));
        WeighingFacts is;
        is.bundle = Mass{900'000};
        is.old_wood = Mass{200'000};
        is.ends = Mass{90'000};
        const auto said = [&](std::int32_t grams) {
            is.report = Report{Mass{grams * 1000}, true};
            return say_prunings_weighed(is, general).key.name;
        };
        CHECK(said(900) == "rule.prunings-weighed.full");
        CHECK(said(1'100) == "rule.prunings-weighed.old-wood");
        CHECK(said(810) == "rule.prunings-weighed.no-ends");
        CHECK(said(500) == "rule.prunings-weighed.light");
        CHECK(said(2'000) == "rule.prunings-weighed.heavy");
        is.report->tared = false;
        CHECK(say_prunings_weighed(is, general).key.name == "rule.prunings-weighed.not-tared");
    }
    TEST_CASE("within 5 % full, to 10 % part, beyond none (our choice)") {
        CHECK(weighed(1'000, 1'000) == 1000);
        CHECK(weighed(1'050, 1'000) == 1000);
        CHECK(weighed(950, 1'000) == 1000);
        CHECK(weighed(1'075, 1'000) == 500);
        CHECK(weighed(900, 1'000) == 0);
        CHECK(weighed(899, 1'000) == 0);
        CHECK(weighed(0, 0) == 1000);
        CHECK(weighed(5, 0) == 0);
    }
    TEST_CASE("asked and not reported is none; not asked has no weight") {
        CHECK(mark_prunings_weighed({}, general) == no_mark);
        CHECK(asked(Offers{}, general).of_vine(RuleName::prunings_weighed) == Tenths{});
        HouseRules house;
        house.prunings_weighed.asked = true;
        CHECK(asked(Offers{}, house).of_vine(RuleName::prunings_weighed).count > 0);
        CHECK(asked(Offers{}, house).total() == Tenths{1000});
    }
}

}  // namespace
