// What is shown while a hand bends a cane down: it begins where the cane stands, ends at the wire, and never jumps.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/growth/history.h"
#include "sim/pruning/hand_bend.h"
#include "sim/pruning/lay.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;

namespace {

double apart(const Place& a, const Place& b) { return std::hypot(std::hypot(in_mm(a.x - b.x), in_mm(a.y - b.y)), in_mm(a.z - b.z)); }

Vine grown(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    return growth::grow_vine(site).value();
}

// Calls with every cane near the head of a few vines that has ten nodes or more.
template <class Seen>
void over_canes(const Seen& seen) {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        CAPTURE(seed);
        const Vine vine = grown(seed);
        for (const Axis& axis : vine.axes) {
            if (!is_cane(vine, axis) || axis.node_count < 10 || distance_to_head(vine, axis) > Length{200'000}) continue;
            CAPTURE(axis.id.value);
            seen(vine, axis);
        }
    }
}

}  // namespace

TEST_SUITE("pruning/hand-bend") {
    TEST_CASE("levels by share of the strain at break: quiet below 0.6, creak to 0.9, skin to 1, then it breaks, our choice") {
        CHECK(level_of(Strain{0}) == BendLevel::quiet);
        CHECK(level_of(Strain{23'999}) == BendLevel::quiet);
        CHECK(level_of(Strain{24'000}) == BendLevel::creak);
        CHECK(level_of(Strain{35'999}) == BendLevel::creak);
        CHECK(level_of(Strain{36'000}) == BendLevel::skin);
        CHECK(level_of(Strain{40'000}) == BendLevel::skin);
        CHECK(level_of(Strain{40'001}) == BendLevel::breaks);
    }
    TEST_CASE("not pulled, it stands as it was found, unstrained") {
        over_canes([](const Vine& vine, const Axis& axis) {
            for (const std::uint32_t node : {1u, 4u, 8u}) {
                const HandBend bend = hand_bend(vine, axis, axis.side, node, {0});
                REQUIRE(bend.places.size() == axis.node_count);
                for (std::uint32_t i = 0; i < axis.node_count; ++i) CHECK(apart(bend.places[i], vine.nodes_of(axis)[i].place) < 0.01);
                CHECK(bend.strain.count <= 5);
                CHECK(bend.level == BendLevel::quiet);
            }
        });
    }
    TEST_CASE("pulled all the way, the node in the hand is at the wire") {
        over_canes([](const Vine& vine, const Axis& axis) {
            const Length wire = fruiting_wire_height(vine);
            for (const std::uint32_t node : {5u, 8u}) {
                if (vine.nodes_of(axis)[node].place.y < wire + Length{100'000}) continue;
                const HandBend bend = hand_bend(vine, axis, axis.side, node, whole);
                if (bend.level == BendLevel::breaks) continue;
                CHECK(std::fabs(in_mm(bend.places[node].y - wire)) < 3.0);
                CHECK(std::fabs(in_mm(bend.places[node].z)) < 1.0);
                CHECK(sign_of(axis.side) * in_mm(bend.places[node].x - bend.places[0].x) > 0);
            }
        });
    }
    TEST_CASE("the further it is pulled the harder it is strained, and it never jumps") {
        over_canes([](const Vine& vine, const Axis& axis) {
            for (const Side side : both_sides) {
                HandBend before = hand_bend(vine, axis, side, 8, {0});
                for (int pulled = 20; pulled <= 1'000; pulled += 20) {
                    CAPTURE(pulled);
                    const HandBend here = hand_bend(vine, axis, side, 8, {pulled});
                    CHECK(here.strain.count >= before.strain.count - 600);  // 0.06 points of %
                    for (std::uint32_t i = 0; i <= 8; ++i) CHECK(apart(here.places[i], before.places[i]) < 80);
                    before = here;
                }
            }
        });
    }
    TEST_CASE("all the way down far out it is strained about as laid, near its base harder") {
        int seen = 0;
        double far_off = 0;
        over_canes([&](const Vine& vine, const Axis& axis) {
            const Course laid = course_of(vine, axis, axis.side);
            if (laid.strain.count > 35'000 || laid.tie + 1 >= axis.node_count || vine.nodes_of(axis)[laid.tie].place.y < Length{1'200'000}) return;
            const HandBend far = hand_bend(vine, axis, axis.side, laid.tie, whole), near = hand_bend(vine, axis, axis.side, 5, whole);
            ++seen;
            far_off = std::max(far_off, std::fabs((far.strain.count - laid.strain.count) / 1e4));
            if (vine.nodes_of(axis)[5].place.y > Length{1'050'000}) CHECK(near.strain.count > far.strain.count - 2'000);
        });
        CHECK(seen >= 20);
        CHECK(far_off < 0.6);  // points of %: held, it is free to turn; tied, it lies level
    }
    TEST_CASE("the mirror side mirrors, and odd questions are answered") {
        const Vine vine = grown(3);
        Vine mirrored = vine;
        for (Node& node : mirrored.nodes) node.place.x = -node.place.x;
        for (const Axis& axis : vine.axes) {
            if (!is_cane(vine, axis)) continue;
            const HandBend here = hand_bend(vine, axis, Side::left, 6, {700}), there = hand_bend(mirrored, *mirrored.find(axis.id), Side::right, 6, {700});
            CHECK(here.strain == there.strain);
            for (std::size_t i = 0; i < here.places.size(); ++i) CHECK(std::abs(here.places[i].x.count + there.places[i].x.count) <= 2);
            CHECK(hand_bend(vine, axis, Side::left, 0, {300}).places == hand_bend(vine, axis, Side::left, 1, {300}).places);
            CHECK(hand_bend(vine, axis, Side::left, 9'999, {5'000}).places == hand_bend(vine, axis, Side::left, axis.node_count - 1, whole).places);
            CHECK(hand_bend(vine, axis, Side::right, 3, {-5}).places == hand_bend(vine, axis, Side::right, 3, {0}).places);
        }
    }
}
