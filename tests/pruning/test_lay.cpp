// Laying on the vine: the rod's answer carried onto it, ties that pull, and the book of answers.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "sim/core/numeric.h"
#include "sim/growth/history.h"
#include "sim/pruning/edit_log.h"
#include "sim/pruning/lay.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;

namespace {

// One cane of 18 joints of 65 mm on a trunk, `below` mm under the wire: it leaves at 45 degrees, swings up within 40 mm
// and leans at `lean`, turned out of the row by `azimuth`.
Vine one_cane(double diameter, double below, double lean = 72, double azimuth = 0, double across = 0) {
    VineBuilder b;
    b.vine.winter = 4;
    b.vine.spacing = {1'800'000};
    b.vine.row_spacing = {2'400'000};
    b.vine.wires = {{WireId{1}, WireKind::fruiting, {900'000}, {}, WireState::up}};
    const double head = 900 - below;
    b.vine.head = node_id(AxisId{1}, 1);
    b.add_axis(AxisId{1}, {}, 1).ripe = from_mm(head);
    b.add_node({}, {40'000}, {38'000}, {});
    b.add_node(from_mm(head), {40'000}, {38'000}, {{}, from_mm(head), {}});
    Axis& cane = b.add_axis(AxisId{2}, b.vine.head, 4);
    cane.side = Side::right;
    cane.ripe = from_mm(18 * 65);
    double x = 20, y = head, z = across, s = 0;
    for (int i = 0; i <= 18; ++i) {
        if (i > 0) {
            const double up = numeric::radians(lean - (lean - 45) * std::exp(-(s + 32) / 40)), out = numeric::radians(azimuth);
            x += 65 * std::cos(up) * std::cos(out), y += 65 * std::sin(up), z += 65 * std::cos(up) * std::sin(out), s += 65;
        }
        const double d = diameter * std::pow(1 - 0.55 * std::max(0.0, s - 32) / 1'250, 0.8);
        b.add_node(from_mm(i == 0 ? 4 : 65), from_mm(d), from_mm(d), {from_mm(x), from_mm(y), from_mm(z)});
        b.add_bud(i == 0 ? BudKind::crown : BudKind::node);
    }
    return b.build().value();
}

const Axis& cane_of(const Vine& vine) { return *vine.find(AxisId{2}); }
double percent(const Course& course) { return course.strain.count / 1e4; }

Vine after(const Vine& vine, std::string_view plan) {
    auto done = prune(vine, parse_plan(plan).value());
    REQUIRE(done.has_value());
    return *std::move(done);
}

}  // namespace

TEST_SUITE("pruning/lay") {
    TEST_CASE("check 45 on the vine: 8 and 10 mm from 100 to 150 mm below the wire hold, 12 mm bolt upright breaks, our choice") {
        struct Row { double diameter, below, percent; };
        for (const Row& row : {Row{8, 100, 2.3}, Row{8, 150, 1.7}, Row{10, 100, 2.9}, Row{10, 120, 2.5}, Row{10, 150, 2.1}}) {
            CAPTURE(row.below);
            const Vine vine = one_cane(row.diameter, row.below);
            const Course course = course_of(vine, cane_of(vine), Side::right);
            CHECK(std::fabs(percent(course) - row.percent) < 0.3);
            CHECK(course.state == LaidState::held);
        }
        const Vine thick = one_cane(12, 100, 90);
        CHECK(would_break(thick, cane_of(thick), Side::right));
    }
    TEST_CASE("a laid cane rises at most 20 mm over the wire, comes onto it at its tie and keeps its joints") {
        for (const double azimuth : {0.0, 40.0, 80.0})
            for (const double across : {-30.0, 0.0, 30.0}) {
                const Vine vine = one_cane(9, 120, 72, azimuth, across);
                const Course course = course_of(vine, cane_of(vine), Side::right);
                REQUIRE(course.places.size() == 19);
                CHECK(course.tie < 12);
                for (std::uint32_t i = 0; i < 19; ++i) {
                    const Place& p = course.places[i];
                    CHECK(in_mm(p.y) <= 900 + 20.3);
                    if (i >= course.tie) CHECK(std::fabs(in_mm(p.y) - 900) < 0.1);
                    if (i >= course.tie) CHECK(std::fabs(in_mm(p.z)) < 0.1);
                    if (i == 0) continue;
                    const Place& q = course.places[i - 1];
                    const double step = std::hypot(std::hypot(in_mm(p.x - q.x), in_mm(p.y - q.y)), in_mm(p.z - q.z));
                    CHECK(step <= 65.01);
                    CHECK(step > 60);
                }
            }
    }
    TEST_CASE("bending across the row or back over the head strains more") {
        double before = 0;
        for (const double azimuth : {0.0, 30.0, 60.0, 90.0, 120.0, 150.0}) {
            const Vine vine = one_cane(9, 120, 60, azimuth);
            const double here = percent(course_of(vine, cane_of(vine), Side::right));
            CHECK(here > before);
            before = here;
        }
    }
    TEST_CASE("a tight tie nearer than the best one pulls the cane down there, a loose one or a farther one does not") {
        const Vine vine = one_cane(10, 100);
        const Course best = course_of(vine, cane_of(vine), Side::right);
        REQUIRE(best.tie >= 7);
        const Vine laid = after(vine, "lay a2 right wraps 1");
        CHECK(laid.laid[0].strain == best.strain);
        CHECK(after(vine, "lay a2 right wraps 1; tie a2.5+15.0").laid[0].strain == best.strain);
        CHECK(after(vine, "lay a2 right wraps 1; tie a2.12+15.0 tight").laid[0].strain == best.strain);
        const Vine near = after(vine, "lay a2 right wraps 1; tie a2.12+15.0 tight; tie a2.5+15.0 tight");
        CHECK(near.laid[0].strain > best.strain);
        CHECK(near.laid[0].strain == course_of(vine, cane_of(vine), Side::right, 5).strain);
        CHECK(std::fabs(in_mm(near.find(node_id(AxisId{2}, 5))->place.y) - 900) < 0.1);
        CHECK_FALSE(check_vine(near).has_value());
    }
    TEST_CASE("tied too near, a cane that would have held breaks through") {
        const Vine vine = one_cane(11.6, 100);
        CHECK_FALSE(would_break(vine, cane_of(vine), Side::right));
        const Vine near = after(vine, "lay a2 right wraps 1; tie a2.5+15.0 tight");
        CHECK(near.laid[0].state == LaidState::snapped);
        CHECK(near.find(node_id(AxisId{2}, 18))->removed);
        CHECK(near.brush.size() == 1);
        CHECK_FALSE(check_vine(near).has_value());
    }
    TEST_CASE("near its base no string bends a cane") {
        const Vine vine = one_cane(10, 60);
        const Course best = course_of(vine, cane_of(vine), Side::right);
        for (std::uint32_t node = 0; node <= 4; ++node) CHECK(course_of(vine, cane_of(vine), Side::right, node).strain == best.strain);
    }
    TEST_CASE("edit by edit on a vine in hand is the whole plan at once, ties that pull too") {
        const Vine vine = one_cane(10, 100);
        const Plan plan = parse_plan("cut a2.14+20.0 shears; lay a2 right wraps 1; tie a2.13+15.0 tight; tie a2.6+15.0 tight; tie a2.5+15.0 tight").value();
        Vine hand = vine;
        for (const Edit& edit : plan.edits) REQUIRE(prune_one(hand, edit, vine).has_value());
        const Vine whole = prune(vine, plan).value();
        REQUIRE(hand.nodes.size() == whole.nodes.size());
        for (std::size_t i = 0; i < hand.nodes.size(); ++i) CHECK(hand.nodes[i].place == whole.nodes[i].place);
        CHECK(hand.laid[0].strain == whole.laid[0].strain);
    }
    TEST_CASE("no end cut moves the strain at all: it is read from the cane as it grew") {
        const Vine vine = one_cane(10, 120);
        for (int node = 4; node < 18; ++node) {
            const Vine cut = after(vine, "cut a2." + std::to_string(node) + "+20.0 shears; lay a2 right wraps 1");
            CHECK(cut.laid[0].strain == course_of(vine, cane_of(vine), Side::right).strain);
        }
    }
    TEST_CASE("the book answers as the rod would, and never for another cane") {
        for (std::uint64_t seed = 1; seed <= 6; ++seed) {
            growth::Site site;
            site.seed = seed;
            const Vine vine = growth::grow_vine(site).value();
            REQUIRE(vine.courses);
            Vine bare = vine;
            bare.courses = nullptr;
            for (const Axis& axis : vine.axes)
                for (const Side side : both_sides) {
                    if (!is_cane(vine, axis)) continue;
                    const Course first = course_of(vine, axis, side), again = course_of(vine, axis, side), anew = course_of(bare, axis, side);
                    CHECK(first.strain == anew.strain);
                    CHECK(again.strain == anew.strain);
                    CHECK(first.places == anew.places);
                    CHECK(again.places == anew.places);
                }
            // A copy shares the book; a change of the copy's wood is another question.
            Vine thicker = vine;
            for (Node& node : thicker.nodes) node.major.count += 2'000, node.minor.count += 2'000;
            for (const Axis& axis : vine.axes)
                if (is_cane(vine, axis)) CHECK(course_of(thicker, axis, axis.side).strain > course_of(vine, axis, axis.side).strain);
        }
    }
    TEST_CASE("every cane of grown vines finds its rest, whichever way it is laid") {
        for (std::uint64_t seed = 1; seed <= 40; ++seed) {
            growth::Site site;
            site.seed = seed;
            site.pruner = static_cast<Pruner>(seed % 8);
            site.vigour = static_cast<Vigour>(seed % 3);
            const Vine vine = growth::grow_vine(site).value();
            for (const Axis& axis : vine.axes)
                for (const Side side : both_sides)
                    if (is_cane(vine, axis)) CHECK(course_of(vine, axis, side).strain.count < 1'000'000);
        }
    }
}
