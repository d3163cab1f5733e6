// Cutting, laying, tying on the little vine (tests/support/little_vine.h), where everything can be counted.
#include <doctest/doctest.h>

#include "sim/pruning/edit_log.h"
#include "sim/pruning/lay.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/plan_text.h"
#include "sim/pruning/prunings.h"
#include "sim/core/random.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"
#include "tests/support/little_vine.h"
#include "tests/support/random_edits.h"

using namespace spurwright;

namespace {

Plan plan_of(std::string_view text) {
    auto plan = parse_plan(text);
    REQUIRE(plan);
    return *plan;
}

Vine pruned(const Vine& vine, std::string_view text) {
    auto after = prune(vine, plan_of(text));
    REQUIRE(after);
    REQUIRE_FALSE(check_vine(*after));
    return *after;
}

const Axis& axis(const Vine& vine, std::uint32_t id) { return *vine.find(AxisId{id}); }

}  // namespace

TEST_SUITE("pruning/prune") {
    const Vine vine = test::little_vine();

    TEST_CASE("the empty plan changes nothing") { CHECK(vine_hash(pruned(vine, "")) == vine_hash(vine)); }

    TEST_CASE("a cut takes all that grows beyond it and leaves a wound") {
        const Vine after = pruned(vine, "cut a2.1+18.0 shears");
        CHECK_FALSE(after.find(node_id(AxisId{2}, 1))->removed);
        CHECK(after.find(node_id(AxisId{2}, 2))->removed);
        CHECK(axis(after, 5).removed);
        CHECK_FALSE(axis(after, 4).removed);
        REQUIRE(after.wounds.size() == 3);
        const Wound& wound = after.wounds.back();
        CHECK(wound.axis == AxisId{2});
        CHECK(wound.node == node_id(AxisId{2}, 1));
        CHECK(wound.beyond.count == 18'000);
        CHECK(wound.major.count == 12'000);  // the joint cut is a2.2's
        CHECK(wound.wood_age == 2);
        REQUIRE(after.brush.size() == 1);
        CHECK(after.brush[0].node == node_id(AxisId{2}, 2));
    }
    TEST_CASE("a cut in the collar takes the crown off: the wound stands on the parent") {
        const Vine after = pruned(vine, "cut a7.0-3.0 shears");
        CHECK(axis(after, 7).removed);
        CHECK(after.wounds.back().node == node_id(AxisId{3}, 2));
        CHECK(after.wounds.back().beyond.count == 1'000);
    }
    TEST_CASE("an end cut at the last node shortens the ripe wood beyond it") {
        const Vine after = pruned(vine, "cut a4.5+20.0 shears");
        CHECK(count_buds(after, axis(after, 4)) == 5);
        CHECK(wood_beyond(after, axis(after, 4), 5).count == 20'000);
        CHECK(after.brush.empty());
    }
    TEST_CASE("what is refused, and why") {
        struct Case { std::string_view plan, key; int step; };
        for (const Case& c : {Case{"cut a9.1+3.0 shears", "error.plan.unknown-part", 1}, Case{"cut a2.1+18.0 shears; cut a5.2+20.0 shears", "error.plan.already-gone", 2},
                              Case{"cut a4.1+70.0 shears", "error.plan.cut-place", 1}, Case{"cut a4.5+40.0 shears", "error.plan.cut-place", 1},
                              Case{"lay a1 left wraps 1", "error.plan.lay-trunk", 1}, Case{"lay a4 left wraps 1; lay a4 left wraps 1", "error.plan.lay-twice", 2},
                              Case{"cut a4.0-4.0 saw; lay a4 left wraps 1", "error.plan.already-gone", 2}, Case{"tie a4.2", "error.plan.tie-far", 1},
                              Case{"cut a4.0-4.5 saw", "error.plan.cut-place", 1}, Case{"mark a99 left", "error.plan.unknown-part", 1}}) {
            CAPTURE(c.plan);
            const auto after = prune(vine, plan_of(c.plan));
            REQUIRE_FALSE(after);
            CHECK(after.error().key.name == c.key);
            CHECK(after.error().where.step == c.step);
        }
        const auto twice = prune(vine, plan_of("mark a4 left; cut a2.0-4.0 loppers; cut a4.2+20.0 shears"));
        REQUIRE_FALSE(twice);
        CHECK(std::get<Count>(twice.error().arguments[1].value).value == 2);  // edit 2 cut it off
    }
    TEST_CASE("two-year wood may be laid and the trunk cut: allowed, and judged") {
        CHECK(prune(vine, plan_of("lay a2 left wraps 0")));
        const Vine felled = pruned(vine, "cut a1.1+200.0 saw");
        CHECK(axis(felled, 2).removed);
        CHECK(axis(felled, 7).removed);
    }
    TEST_CASE("a laid cane lies on the wire, its joints as long as before") {
        const Vine after = pruned(vine, "lay a7 right wraps 1");
        const auto nodes = after.nodes_of(axis(after, 7));
        const Place tip = nodes.back().place;
        CHECK(tip.x > nodes[0].place.x);
        CHECK(std::abs(tip.y.count - 900'000) < 120'000);
        REQUIRE(after.laid.size() == 2);
        CHECK(after.laid[1].axis == AxisId{7});
        CHECK(after.laid[1].state != LaidState::snapped);
    }
    TEST_CASE("the strain of a cane does not hear its end cut") {
        const Vine cut = pruned(vine, "cut a5.4+20.0 shears");
        CHECK(course_of(cut, axis(cut, 5), Side::left).strain == course_of(vine, axis(vine, 5), Side::left).strain);
    }
    TEST_CASE("the mirror side mirrors the course") {
        Vine mirrored = vine;
        for (Node& node : mirrored.nodes) node.place.x = -node.place.x;
        const Course here = course_of(vine, axis(vine, 4), Side::left), there = course_of(mirrored, axis(mirrored, 4), Side::right);
        for (std::size_t i = 0; i < here.places.size(); ++i) CHECK(here.places[i].x == -there.places[i].x);
    }
    TEST_CASE("a thick cane bent hard breaks through and what lies beyond falls") {
        Vine thick = vine;
        for (Node& node : thick.nodes)
            if (axis_of(node.id) == AxisId{5}) node.major = node.minor = Length{14'000};
        const Vine after = pruned(thick, "lay a5 left wraps 1");
        CHECK(after.laid[1].state == LaidState::snapped);
        CHECK(after.find(node_id(AxisId{5}, 5))->removed);
        CHECK(after.brush.size() == 1);
    }
}

TEST_SUITE("pruning/prunings") {
    const Vine vine = test::little_vine();

    TEST_CASE("mass of a joint is density times the ellipse times its length") {
        const Node& node = *vine.find(node_id(AxisId{4}, 2));  // 60 mm of 8.8 x 8.3 mm
        CHECK(joint_mass_mg(node) == doctest::Approx(0.95 * 3.14159265358979 / 4 * 8.8 * 8.3 * 60).epsilon(1e-12));
    }
    TEST_CASE("before = kept + removed, and two-year cuts weigh nothing of one year [cornell-fifteen]") {
        const Vine bare = pruned(vine, "cut a4.0+4.0 shears; cut a5.0+4.0 shears; cut a6.0+4.0 shears; cut a7.0+4.0 shears");
        const Vine further = pruned(bare, "cut a2.0-2.0 loppers; cut a3.0-2.0 loppers");
        const Prunings first = prunings(vine, bare);
        CHECK(first.before.one_year_mg == doctest::Approx(first.kept.one_year_mg + first.removed.one_year_mg).epsilon(1e-12));
        CHECK(first.removed.older_mg == 0.0);
        CHECK(first.one_year_nodes == 16);
        CHECK(first.one_year_nodes_removed == 16);
        const Prunings second = prunings(bare, further);
        CHECK(second.removed.older_mg > 0.0);
        CHECK(prunings(vine, further).removed.one_year_mg > first.removed.one_year_mg - 1e-9);
    }
    TEST_CASE("an ideal cane of 13.5 joints of 6 cm, 7 to 8 mm thick, weighs 30 to 40 g [wineskills-factors]") {
        Node joint;
        joint.joint = {60'000};
        joint.major = joint.minor = {7'400};
        const double grams = 13.5 * joint_mass_mg(joint) / 1000;
        CHECK(grams >= 30);
        CHECK(grams <= 40);
    }
}

TEST_SUITE("pruning/edit-log") {
    TEST_CASE("undo then redo is identity, and a new edit forgets what was undone") {
        const Vine vine = test::little_vine();
        for (std::uint64_t seed = 0; seed < 200; ++seed) {
            EditLog log;
            for (const Edit& edit : test::random_edits(vine, seed, 12).edits) log.add(edit);
            const Plan all = log.done();
            const auto full = vine_hash(prune(vine, all).value());
            std::size_t steps = 0;
            while (log.undo()) ++steps;
            CHECK(steps == all.edits.size());
            CHECK(vine_hash(prune(vine, log.done()).value()) == vine_hash(vine));
            while (log.redo()) {}
            CHECK(vine_hash(prune(vine, log.done()).value()) == full);
            if (log.undo()) {
                log.add(Mark{AxisId{4}, Role::spur});
                CHECK(log.undone() == 0);
            }
        }
    }
    TEST_CASE("random legal edits: every one is carried out, wood is never added, mass is conserved") {
        const Vine vine = test::little_vine();
        for (std::uint64_t seed = 0; seed < 400; ++seed) {
            CAPTURE(seed);
            const Plan plan = test::random_edits(vine, seed, 20);
            const auto after = prune(vine, plan);
            REQUIRE(after);
            if (const auto broken = check_vine(*after)) FAIL_CHECK(broken->key.name << " " << std::get<std::string>(broken->arguments[0].value) << ": " << print_plan(plan));
            const Prunings p = prunings(vine, *after);
            CHECK(p.removed.one_year_mg >= -1e-6);
            CHECK(p.removed.older_mg >= -1e-6);
            CHECK(parse_plan(print_plan(plan)).value() == plan);
        }
    }
}
