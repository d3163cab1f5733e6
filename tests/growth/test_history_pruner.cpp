// The history pruner: its costs by hand, and plans that are legal, whole and in character on any vine.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/growth/history.h"
#include "sim/growth/history_choice.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using growth::Candidate;
using growth::PrunerHabits;

namespace {

Vine vine_of(std::uint64_t seed, int age = 12) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return *growth::grow_vine(site);
}

// A cane that costs nothing but its distance: 30 mm out, 9 mm thick, joints of 65 mm.
Candidate plain_candidate() {
    Candidate c;
    c.distance_mm = 30;
    c.below_wire_mm = 100;
    c.ripe_buds = 14;
    c.thickness_mm = 9;
    c.joint_mm = 65;
    return c;
}

struct Kept {
    int laid = 0, spurs = 0, laid_buds = 0, spur_buds = 0, other_canes = 0;
};
Kept kept(const Vine& cut) {
    Kept k;
    for (const Axis& axis : cut.axes) {
        if (axis.removed || !is_cane(cut, axis)) continue;
        const int buds = count_buds(cut, axis);
        const bool laid = std::any_of(cut.laid.begin(), cut.laid.end(),
                                      [&](const Laid& l) { return l.axis == axis.id && l.winter == cut.winter; });
        if (laid)
            ++k.laid, k.laid_buds += buds;
        else if (buds > 0 && buds <= 2)
            ++k.spurs, k.spur_buds += buds;
        else
            k.other_canes += buds > 0;
    }
    return k;
}

} // namespace

TEST_SUITE("growth/history-pruner") {
    TEST_CASE("the cost of a cane, term by term") {
        const PrunerHabits good;
        const auto cost = [&](auto change) {
            Candidate c = plain_candidate();
            change(c);
            return growth::cane_cost(c, good, std::nullopt);
        };
        CHECK(cost([](Candidate&) {}) == 12);
        CHECK(cost([](Candidate& c) { c.distance_mm = 0; }) == 0);
        CHECK(cost([](Candidate& c) { c.thickness_mm = 7; }) == 12 + 40);
        CHECK(cost([](Candidate& c) { c.thickness_mm = 12.5; }) == 12 + 40);
        CHECK(cost([](Candidate& c) { c.joint_mm = 40; }) == 12 + 30);
        CHECK(cost([](Candidate& c) { c.joint_mm = 105; }) == 12 + 30);
        CHECK(cost([](Candidate& c) { c.azimuth_deg = 80; }) == 12 + 60);
        CHECK(cost([](Candidate& c) { c.flagged = true; }) == 312);
        CHECK(cost([](Candidate& c) { c.below_wire_mm = -1; }) == 212);
        CHECK(cost([](Candidate& c) { c.ripe_buds = 9; }) == 72);
        CHECK(cost([](Candidate& c) { c.whim = 15; }) == 27);
        CHECK(cost([](Candidate& c) { c.ripe_buds = 3; }) == std::nullopt);
        CHECK(cost([](Candidate& c) { c.distance_mm = 1800; }) == std::nullopt); // 720: dearer than 700
    }
    TEST_CASE("the cost of a spur, term by term") {
        Candidate cane = plain_candidate(), spur = plain_candidate();
        CHECK(growth::spur_cost(spur, &cane) == 15);
        spur.distance_mm = 31;
        CHECK(growth::spur_cost(spur, &cane) == 16 + 150);
        spur = plain_candidate();
        spur.below_wire_mm = 89;
        CHECK(growth::spur_cost(spur, &cane) == 15 + 200);
        spur = plain_candidate();
        spur.thickness_mm = 5.4;
        CHECK(growth::spur_cost(spur, &cane) == 15 + 60);
        spur = plain_candidate();
        spur.ripe_buds = 1;
        CHECK(growth::spur_cost(spur, &cane) == 15 + 200);
    }
    TEST_CASE("far canes ask for 50 mm beyond last winter's origin") {
        const PrunerHabits far = growth::habits_of(Pruner::far_canes);
        Candidate c = plain_candidate();
        c.distance_mm = 150;
        CHECK(growth::cane_cost(c, far, from_mm(100)) == 0);
        CHECK(*growth::cane_cost(c, far, from_mm(0)) > *growth::cane_cost(c, far, from_mm(60)));
    }
    TEST_CASE("a good plan: two canes laid, two spurs of two buds, nothing else left of last summer, in 200 vines") {
        int both = 0, snapped = 0;
        for (std::uint64_t seed = 0; seed < 200; ++seed) {
            const Vine vine = vine_of(seed, 5 + static_cast<int>(seed % 15));
            const Plan plan = growth::history_plan(vine, {});
            const auto cut = prune(vine, plan);
            CAPTURE(seed);
            REQUIRE(cut.has_value());
            REQUIRE(parse_plan(print_plan(plan)).has_value());
            REQUIRE(*parse_plan(print_plan(plan)) == plan);
            const Kept k = kept(*cut);
            CHECK(k.other_canes == 0);
            CHECK(k.laid <= 2);
            CHECK(k.laid_buds + k.spur_buds <= 27);
            both += k.laid == 2 && k.spurs == 2;
            for (const Laid& laid : cut->laid)
                snapped += laid.winter == cut->winter && laid.state == LaidState::snapped;
            for (const Axis& axis : cut->axes) {
                if (!was_laid_last_winter(*cut, axis)) continue;
                // Last winter's cane stays only as far as it bears what was kept.
                int beyond = 0;
                for (const Node& node : cut->nodes_of(axis)) beyond += !node.removed;
                bool bears = false;
                for (const Axis& child : cut->axes)
                    bears =
                        bears || (axis_of(child.parent) == axis.id && !child.removed && count_buds(*cut, child) > 0);
                CHECK((axis.removed || bears || beyond <= 1));
            }
        }
        CHECK(both >= 190);
        CHECK(snapped == 0);
    }
    TEST_CASE("characters show: thin wood is thinner, no spurs leaves none, too many buds leaves more, neglect cuts "
              "nothing") {
        double good_thickness = 0, thin_thickness = 0;
        int good_buds = 0, many_buds = 0, no_spurs = 0;
        for (std::uint64_t seed = 0; seed < 40; ++seed) {
            const Vine vine = vine_of(seed);
            const auto cut_by = [&](Pruner pruner) {
                return *prune(vine, growth::history_plan(vine, growth::habits_of(pruner)));
            };
            const auto laid_thickness = [](const Vine& cut) {
                double sum = 0;
                for (const Laid& laid : cut.laid)
                    if (laid.winter == cut.winter) sum += in_mm(thickness(cut, *cut.find(laid.axis)));
                return sum;
            };
            const Vine good = cut_by(Pruner::good);
            good_thickness += laid_thickness(good);
            thin_thickness += laid_thickness(cut_by(Pruner::thin_wood));
            good_buds += kept(good).laid_buds + kept(good).spur_buds;
            const Kept many = kept(cut_by(Pruner::too_many_buds));
            many_buds += many.laid_buds + many.spur_buds;
            no_spurs += kept(cut_by(Pruner::no_spurs)).spurs;
            CHECK(growth::history_plan(vine, growth::habits_of(Pruner::neglect)).edits.empty());
        }
        CHECK(thin_thickness < 0.85 * good_thickness);
        CHECK(many_buds > good_buds + 40);
        CHECK(no_spurs == 0);
    }
    TEST_CASE("a plan for a vine drawn by hand is legal too") {
        const Vine vine = test::little_vine();
        for (std::size_t pruner = 0; pruner < words_of(Pruner{}).size(); ++pruner)
            CHECK(prune(vine, growth::history_plan(vine, growth::habits_of(static_cast<Pruner>(pruner)))).has_value());
    }
    TEST_CASE("spells: one run of flawed winters of one kind, neglect at the end of the life") {
        for (std::uint64_t seed = 0; seed < 100; ++seed) {
            growth::Site site;
            site.seed = seed;
            site.age = 20;
            site.pruner = Pruner::neglect;
            int neglected = 0;
            for (int winter = 3; winter < site.age; ++winter) neglected += growth::habits_in(site, winter).cuts_nothing;
            CHECK(neglected >= 1);
            CHECK(neglected <= 3);
            CHECK(growth::habits_in(site, site.age - 1).cuts_nothing);
            site.pruner = Pruner::good_with_spell;
            int runs = 0, flawed = 0;
            bool before = false;
            for (int winter = 3; winter < site.age; ++winter) {
                const PrunerHabits h = growth::habits_in(site, winter);
                const bool now = winter > 4 && (h.from_last_origin || h.thin_mm != 8.0 || !h.spurs || h.load != 1.0 ||
                                                h.stub_low != 1.5);
                runs += now && !before;
                flawed += now;
                before = now;
            }
            CHECK(runs == 1);
            CHECK(flawed >= 1);
            CHECK(flawed <= 8);
        }
    }
}
