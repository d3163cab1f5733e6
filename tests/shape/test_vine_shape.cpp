#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/growth/history.h"
#include "sim/pruning/plan.h"
#include "sim/shape/vine_shape.h"
#include "sim/vine/vine.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::shape;

namespace {

Vine grown(std::uint64_t seed, int age) {
    growth::Site site;
    site.seed = seed;
    site.age = age;
    return *growth::grow_vine(site);
}

} // namespace

TEST_CASE("every axis of the little vine stands, with its nodes, buds, tie and ends") {
    const VineShape shape = vine_shape(test::little_vine());
    CHECK(shape.stems.size() == 7);
    CHECK(shape.find(AxisId{5})->nodes.size() == 6);
    std::size_t node_buds = 0;
    for (const BudShape& bud : shape.buds) node_buds += bud.kind == BudKind::node;
    CHECK(node_buds == 5 + 5 + 2 + 4);
    CHECK(shape.ties.size() == 1);
    CHECK(shape.find(AxisId{2})->end == StemEnd::cut);
    CHECK(shape.find(AxisId{2})->end_winters == 1);
    CHECK(shape.find(AxisId{1})->end == StemEnd::crown);
    CHECK(shape.wounds.empty()); // both wounds are the ends of standing stems
}

TEST_CASE("ripe bark ends where the table says, and only where nodes stand beyond") {
    Vine vine = test::little_vine();
    Axis& axis = *std::find_if(vine.axes.begin(), vine.axes.end(), [](const Axis& a) { return a.id == AxisId{5}; });
    CHECK(vine_shape(vine).find(axis.id)->ripe_at > 10); // ripe to the end: no place on it
    const auto rows = vine.nodes_of(axis);
    axis.ripe = rows[1].joint + rows[2].joint + Length{rows[3].joint.count / 2}; // the middle of the third joint
    const VineShape shape = vine_shape(vine);
    const Stem& stem = *shape.find(axis.id);
    CHECK(stem.ripe_at == doctest::Approx((stem.nodes[2].from_root + stem.nodes[3].from_root) / 2).epsilon(1e-4));
    axis.ripe = Length{0};
    CHECK(vine_shape(vine).find(axis.id)->ripe_at == doctest::Approx(stem.nodes[0].from_root));
}

TEST_CASE("the middle of a joint is as thick as the table says") {
    const Vine vine = grown(3, 12);
    const VineShape shape = vine_shape(vine);
    for (const Stem& stem : shape.stems) {
        if (stem.trunk) continue; // its joints are drawn in pieces
        const auto& points = stem.line.points();
        for (std::size_t s = 1; s < stem.line.segment_count(); ++s) {
            if (points[s + 1].node <= 0 || points[s].node < 0) continue;
            const Node& node = *vine.find(node_id(stem.axis, static_cast<std::uint32_t>(points[s + 1].node)));
            CHECK(stem.line.at(s, 0.5).radii.mean() * 4 ==
                  doctest::Approx(in_m(node.major) + in_m(node.minor)).epsilon(1e-9));
        }
    }
}

TEST_CASE("a bud looks to the side that its table names, as far as the wood lets it") {
    const Vine vine = grown(9, 12);
    const VineShape shape = vine_shape(vine);
    int asked = 0, right = 0;
    for (const BudShape& bud : shape.buds) {
        if (bud.kind != BudKind::node) continue;
        const Side side = shape.stems[bud.stem].side;
        const double outward = side == Side::left ? -bud.out.x : bud.out.x;
        const Points points = vine.find(bud.bud)->points;
        // The side alone: a bud also leans along its cane, which the table counts in.
        const double towards = points == Points::up        ? bud.out.y
                               : points == Points::down    ? -bud.out.y
                               : points == Points::outward ? outward
                               : points == Points::inward  ? -outward
                                                           : std::fabs(bud.out.z);
        ++asked;
        right += towards > 0.25;
    }
    CHECK(asked > 200);
    CHECK(right >= asked * 9 / 10);
}

TEST_CASE("what a cut took is not drawn, and the face of this winter is fresh") {
    const Vine vine = test::little_vine();
    const Vine after = *prune(vine, Plan{{Cut{node_id(AxisId{5}, 2), Length{20'000}, {}, {}}}});
    const VineShape shape = vine_shape(after);
    const Stem& cut = *shape.find(AxisId{5});
    CHECK(cut.nodes.size() == 3);
    CHECK(cut.end == StemEnd::cut);
    CHECK(cut.end_winters == 0);
    const double beyond = length(cut.line.points().back().place - cut.nodes.back().place);
    CHECK(beyond == doctest::Approx(0.020).epsilon(0.01));
    const Vine whole_off = *prune(vine, Plan{{Cut{node_id(AxisId{4}, 0), Length{-1'000}, {}, {}}}});
    const VineShape off = vine_shape(whole_off);
    CHECK(off.find(AxisId{4}) == nullptr);
    REQUIRE(off.wounds.size() == 1);
    CHECK(off.wounds[0].winters == 0);
    CHECK(off.wounds[0].axis == AxisId{4});
}

TEST_CASE("grown vines of every age have a shape without holes or numbers that are none") {
    for (const int age : {3, 5, 12, 30})
        for (const std::uint64_t seed : {1u, 2u, 3u}) {
            const VineShape shape = vine_shape(grown(seed, age));
            CHECK(shape.stems.size() > 4);
            for (const Stem& stem : shape.stems) {
                for (const LinePoint& p : stem.line.points()) {
                    CHECK(std::isfinite(p.place.x + p.place.y + p.place.z));
                    CHECK(p.radii.minor > 0);
                }
                if (stem.trunk) continue;
                const Stem& parent = shape.stems[static_cast<std::size_t>(stem.parent_stem)];
                const StemNode& on = parent.nodes[index_of(stem.parent)];
                CHECK(length(stem.line.points()[0].place - on.place) < on.radius);
            }
            for (const WoundShape& wound : shape.wounds) CHECK(std::fabs(length(wound.outward) - 1) < 1e-9);
        }
}

TEST_CASE("a fifth of old trunks bear a dead strip, below an old wound or a dead arm of their own; no young one does") {
    int old_vines = 0, strips = 0, young_strips = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        young_strips += static_cast<int>(vine_shape(grown(seed, 11)).dead_strips.size());
        const Vine vine = grown(seed, 13 + static_cast<int>(seed % 16));
        const VineShape shape = vine_shape(vine);
        ++old_vines;
        strips += shape.dead_strips.empty() ? 0 : 1;
        CHECK(shape.dead_strips.size() <= 1);
        for (const DeadStrip& strip : shape.dead_strips) {
            const Stem& trunk = shape.stems[strip.stem];
            CHECK(trunk.trunk);
            CHECK(strip.from < strip.to);
            CHECK(strip.from >= trunk.graft_at);
            CHECK(strip.to <= trunk.nodes.back().from_root + 1e-9);
            CHECK(strip.half_width > 0);
            CHECK(strip.half_width < trunk.nodes.back().radius * 2);
            CHECK(length(strip.out) == doctest::Approx(1));
            REQUIRE((bool(strip.wound) != bool(strip.dead)));
            if (strip.dead) {
                CHECK(shape.find(strip.dead)->dead);
                continue;
            }
            const auto wound = std::find_if(vine.wounds.begin(), vine.wounds.end(), [&](const Wound& w) { return w.id == strip.wound; });
            REQUIRE(wound != vine.wounds.end());
            CHECK(wound->winter <= vine.winter - 3);
            CHECK(wound->wood_age >= 2);
            CHECK(axis_of(wound->node) == trunk.axis);
        }
    }
    MESSAGE(strips << " of " << old_vines << " old trunks bear a strip");
    CHECK(young_strips == 0);
    CHECK(strips * 100 >= 12 * old_vines);
    CHECK(strips * 100 <= 30 * old_vines);
}
