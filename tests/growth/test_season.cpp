// One season on hand-made and grown vines.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/core/numeric.h"
#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/rhythm.h"
#include "sim/growth/season.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using test::broken;

namespace {

//      |  |  |  |   canes of twelve clear joints of 60 mm, as many as asked, all on the head
//      `--`--'--'
//         |         trunk, 0.8 m, capacity 54
Vine bare_vine(int canes, int joints_of_last) {
    VineBuilder builder;
    Vine& v = builder.vine;
    v.winter = 9;
    v.spacing = from_mm(1800);
    v.row_spacing = from_mm(2400);
    v.capacity = 54'000;
    v.wires = {{WireId{1}, WireKind::fruiting, from_mm(900), {}, WireState::up}};
    builder.add_axis(AxisId{1}, {}, 1).ripe = from_mm(800);
    builder.add_node({}, from_mm(45), from_mm(42));
    builder.add_node(from_mm(800), from_mm(45), from_mm(42), {{}, from_mm(800), {}});
    v.head = node_id(AxisId{1}, 1);
    for (int cane = 0; cane < canes; ++cane) {
        const int joints = cane + 1 == canes ? joints_of_last : 12;
        builder.add_axis(AxisId{static_cast<std::uint32_t>(cane) + 2}, v.head, 9).ripe = from_mm(60.0 * joints);
        const double x = cane % 2 == 0 ? -20 : 20;
        for (int i = 0; i <= joints; ++i) {
            builder.add_node(from_mm(i == 0 ? 4 : 60), from_mm(9), from_mm(9),
                             {from_mm(x), from_mm(804.0 + 60 * i), {}});
            if (i == 0)
                builder.add_bud(BudKind::crown), builder.add_bud(BudKind::crown);
            else
                builder.add_bud(BudKind::node);
        }
    }
    return *builder.build(true);
}

// Mean thickness at the base of this season's canes.
double mean_base_mm(const Vine& vine) {
    double sum = 0, count = 0;
    for (const Axis& axis : vine.axes)
        if (is_cane(vine, axis)) sum += in_mm(mean_diameter(vine.nodes_of(axis)[0])), ++count;
    return sum / count;
}

} // namespace

TEST_SUITE("growth/season") {
    TEST_CASE("the little vine grows on, sound, with new names after every old one") {
        const Vine vine = test::little_vine();
        growth::SeasonNotes notes;
        const Vine next = growth::season(vine, {}, &notes);
        CHECK(broken(next) == "");
        CHECK(next.winter == 5);
        CHECK(notes.count_nodes == 16);
        CHECK(notes.burst + notes.blind == 16);
        for (const Axis& axis : next.axes)
            if (axis.born == 5) CHECK(axis.id.value > 7);
        CHECK(next.find(AxisId{4})->born == 4);
        CHECK_FALSE(next.origin_left.has_value()); // nothing was laid
    }
    TEST_CASE("cut wood is gone next winter, and its stubs have passed their base buds on") {
        const Vine vine = test::little_vine();
        const auto cut =
            prune(vine, {{Cut{node_id(AxisId{5}, 0), from_mm(8), Tool::shears, {}},
                          Cut{node_id(AxisId{7}, 2), from_mm(20), Tool::shears, {}}, Lay{AxisId{4}, Side::left, 2}}});
        REQUIRE(cut.has_value());
        const Vine next = growth::season(*cut, {});
        REQUIRE(broken(next) == "");
        CHECK(next.find(AxisId{5}) == nullptr);
        CHECK(next.find(AxisId{7})->node_count == 3);
        CHECK(next.find(AxisId{7})->end == AxisEnd::cut);
        CHECK(next.find(AxisId{7})->ripe == from_mm(122)); // joints of 40 and 62 mm and the 20 mm stub
        CHECK(was_laid_last_winter(next, *next.find(AxisId{4})));
        CHECK(was_spur_last_winter(next, *next.find(AxisId{7})));
        CHECK(next.origin_left == distance_to_head(*cut, *cut->find(AxisId{4})));
        CHECK(next.nodes_of(*next.find(AxisId{4}))[5].place == cut->nodes_of(*cut->find(AxisId{4}))[5].place);
        REQUIRE(next.ties.size() == 1);
        CHECK(next.ties[0].state == TieState::sunk);
        const bool passed = std::any_of(next.wounds.begin(), next.wounds.end(), [](const Wound& w) {
            return w.axis == AxisId{5} && w.node == node_id(AxisId{2}, 2);
        });
        CHECK(passed);
    }
    TEST_CASE("a laid cane thickens by 3 mm at its base over the summer") {
        const Vine vine = test::little_vine();
        const Vine cut = *prune(vine, {{Lay{AxisId{4}, Side::left, 2}}});
        const Vine next = growth::season(cut, {});
        CHECK(in_mm(mean_diameter(*next.find(node_id(AxisId{4}, 1)))) >=
              in_mm(mean_diameter(*vine.find(node_id(AxisId{4}, 1)))) + 3.0 - 1e-9);
    }
    TEST_CASE("the same vine and settings give the same next winter, another seed another") {
        Vine vine = test::little_vine();
        CHECK(vine_hash(growth::season(vine, {})) == vine_hash(growth::season(vine, {})));
        const std::uint64_t first = vine_hash(growth::season(vine, {}));
        vine.seed = 99;
        CHECK(vine_hash(growth::season(vine, {})) != first);
    }
    TEST_CASE("any legal pruning grows on into a sound vine: 300 random plans, trunks cut and two-year wood laid among "
              "them") {
        int trunks_cut = 0, snapped = 0;
        for (std::uint32_t trial = 0; trial < 300; ++trial) {
            growth::Site site;
            site.seed = trial % 7;
            site.age = 3 + static_cast<int>(trial % 9);
            const Vine uncut = *growth::grow_vine(site);
            Vine vine = uncut;
            const auto pick = [&](std::uint32_t nth, std::size_t count) {
                return static_cast<std::size_t>(unit(draw(trial, 1, nth)) * static_cast<double>(count));
            };
            for (std::uint32_t edit = 0; edit < 25; ++edit) {
                const LegalEdits legal = legal_edits(vine);
                const std::size_t kind = pick(8 * edit, 10);
                if (kind < 6 && !legal.cuts.empty()) {
                    const CutRange& range = legal.cuts[pick(8 * edit + 1, legal.cuts.size())];
                    REQUIRE(
                        prune_one(vine, Cut{range.past,
                                            {between(draw(trial, 2, edit), range.lowest.count, range.highest.count)},
                                            Tool::saw,
                                            {}},
                                  uncut)
                            .has_value());
                } else if (kind < 9 && !legal.lays.empty()) {
                    REQUIRE(
                        prune_one(vine, Lay{legal.lays[pick(8 * edit + 1, legal.lays.size())], both_sides[edit % 2], 1}, uncut)
                            .has_value());
                } else if (!legal.ties.empty()) {
                    REQUIRE(prune_one(vine, Fasten{legal.ties[pick(8 * edit + 1, legal.ties.size())], {}, true}, uncut)
                                .has_value());
                }
            }
            for (const Laid& laid : vine.laid) snapped += laid.state == LaidState::snapped;
            trunks_cut += vine.find(vine.head)->removed;
            CAPTURE(trial);
            const Vine next = growth::season(vine, {});
            REQUIRE(broken(next) == "");
            REQUIRE(broken(growth::season(next, {})) == "");
        }
        CHECK(trunks_cut > 0);
        CHECK(snapped > 0);
    }
    TEST_CASE("check 36: more nodes kept, never a longer mean shoot, and thinner canes in the tables, scatter off "
              "[greven-2014, keller-2015]") {
        growth::SeasonSettings trial = growth::trial_settings();
        trial.scatter = false;
        std::vector<double> bases;
        double last_length = 1e9;
        for (const int canes : {1, 2, 3, 4, 5, 6}) {
            growth::SeasonNotes notes;
            const Vine next = growth::season(bare_vine(canes, 12), trial, &notes);
            REQUIRE(broken(next) == "");
            REQUIRE(notes.count_nodes == 12 * canes);
            CAPTURE(canes);
            CHECK(notes.mean_length_cm < last_length);
            last_length = notes.mean_length_cm;
            bases.push_back(mean_base_mm(next));
        }
        // Blind nodes near the base take the weakest shoots out of the mean, so neighbours may tie to a thousandth.
        for (std::size_t i = 0; i + 2 < bases.size(); ++i) CHECK(bases[i + 2] < bases[i]);
    }
    TEST_CASE("non-count shoots at 10 and 50 nodes, before thinning, within the trial's own spread [epee-2022]") {
        growth::SeasonSettings trial = growth::trial_settings();
        double ten = 0, fifty = 0, blind = 0;
        for (std::uint64_t seed = 0; seed < 40; ++seed) {
            growth::SeasonNotes notes;
            Vine vine = bare_vine(1, 10);
            vine.seed = seed;
            growth::season(vine, trial, &notes);
            ten += notes.non_count_pushed / 40.0;
            vine = bare_vine(5, 2);
            vine.seed = seed;
            growth::season(vine, trial, &notes);
            fifty += notes.non_count_pushed / 40.0;
            blind += notes.blind / 40.0;
        }
        CHECK(std::fabs(ten - 29.5) <= 3.0);
        CHECK(std::fabs(fifty - 2.8) <= 1.9);
        CHECK(std::fabs(blind - 7.6) <= 1.5);
    }
    TEST_CASE("canes stand as a hedge: tops in one plane, within the hedge's sides, growing from below the wire up") {
        growth::Site site;
        site.seed = 5;
        const Vine vine = *growth::grow_vine(site);
        for (const Axis& axis : vine.axes) {
            if (age(vine, axis) != 1) continue;
            for (const Node& node : vine.nodes_of(axis)) {
                CHECK(in_mm(node.place.y) <= 900 + 1000 + 20.001);
                if (is_cane(vine, axis)) CHECK(std::fabs(in_mm(node.place.z)) <= 200.001);
            }
        }
    }
}

TEST_SUITE("growth/summer and memory") {
    TEST_CASE("without summer acts nothing is lost to them") {
        growth::SeasonNotes n;
        growth::season(bare_vine(3, 12), growth::trial_settings(), &n);
        CHECK(n.thinned_mg == 0);
        CHECK(n.leaf_removal_mg == 0);
        CHECK(n.hedged_mg == 0);
        CHECK(n.grown_mg > 0);
    }
    TEST_CASE("a dead primary is stood in for by its secondary, with less fruit; a bud with nothing left stays blind") {
        growth::SeasonSettings trial = growth::trial_settings();
        trial.scatter = false;
        growth::SeasonNotes sound, hurt, dead;
        growth::season(bare_vine(3, 12), trial, &sound);
        Vine vine = bare_vine(3, 12);
        for (Bud& bud : vine.buds)
            if (bud.kind == BudKind::node) bud.primary = false;
        growth::season(vine, trial, &hurt);
        CHECK(hurt.count_nodes == sound.count_nodes);
        CHECK(hurt.burst == sound.burst);
        CHECK(hurt.doubles_pushed == 0);
        CHECK(hurt.yield_kg < 0.6 * sound.yield_kg);
        CHECK(hurt.yield_kg > 0.3 * sound.yield_kg);
        for (Bud& bud : vine.buds)
            if (bud.kind == BudKind::node) bud.secondary = bud.tertiary = false;
        growth::season(vine, trial, &dead);
        CHECK(dead.count_nodes == 0);
        CHECK(dead.non_count_pushed > sound.non_count_pushed);
    }
    TEST_CASE("memory: a heavy crop lowers next season's reserves and capacity, a light one lifts capacity; without "
              "memory both hold") {
        growth::SeasonSettings trial = growth::trial_settings();
        Vine vine = bare_vine(6, 12);
        CHECK(growth::season(vine, trial).reserves == whole);
        CHECK(growth::season(vine, trial).last_yield.count == 0);
        trial.site_capacity = 54;
        growth::SeasonNotes heavy, light;
        const Vine next = growth::season(vine, trial, &heavy);
        CHECK(next.reserves.count < 900);
        CHECK(in_g(next.last_yield) == doctest::Approx(1000 * heavy.yield_kg).epsilon(1e-6));
        CHECK(growth::season(bare_vine(2, 12), trial, &light).reserves == whole);
        CHECK(light.yield_kg < heavy.yield_kg);
        // The same vine after a crop of 20 and of 2 times its prunings.
        const auto capacity_after = [&](double ratio) {
            Vine v = *prune(next, growth::history_plan(next, growth::habits_of(Pruner::good)));
            v.last_yield = from_g(ratio * in_g(from_g(prunings(next, v).removed.one_year_mg / 1000)));
            growth::SeasonNotes n;
            growth::season(v, trial, &n);
            return n.capacity;
        };
        CHECK(capacity_after(20) < capacity_after(7));
        CHECK(capacity_after(7) == doctest::Approx(54).epsilon(0.001));
        CHECK(capacity_after(2) > capacity_after(7));
    }
}
