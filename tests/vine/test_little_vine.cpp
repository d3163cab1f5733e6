// The little vine read back by hand: the facts everyone measures alike, and its hash.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/core/hash.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/little_vine.h"

using namespace spurwright;

TEST_SUITE("vine/little-vine") {
    const Vine vine = test::little_vine();

    TEST_CASE("its canonical text has 71 lines, 3544 bytes and the hash counted once by hand") {
        const std::string text = canonical_text(vine);
        CHECK(std::count(text.begin(), text.end(), '\n') == 71);
        CHECK(text.size() == 3544);
        CHECK(hash_text(vine_hash(vine)) == "c5e6dcf2ebe172d4");
    }
    TEST_CASE("one micrometre more on one joint is another vine") {
        Vine longer = vine;
        const Node* node = longer.find(node_id(AxisId{7}, 3));
        longer.nodes[static_cast<std::size_t>(node - longer.nodes.data())].joint += Length{1};
        CHECK(hash_text(vine_hash(longer)) == "b36e0f74cff4a4c7");
    }
    TEST_CASE("thickness, joints, buds, distance and height of its four canes, counted by hand") {
        struct Expected { std::uint32_t axis; int thickness, joint, buds, distance, below; };
        for (const Expected& e : {Expected{4, 8450, 66250, 5, 94'000, 14'000}, Expected{5, 8975, 71250, 5, 187'000, -4'000},
                                  Expected{6, 6600, 55000, 2, 33'000, 69'000}, Expected{7, 8250, 68000, 4, 78'000, 30'000}}) {
            const Axis& axis = *vine.find(AxisId{e.axis});
            CAPTURE(e.axis);
            CHECK(thickness(vine, axis).count == e.thickness);
            CHECK(mean_internode(vine, axis).count == e.joint);
            CHECK(count_buds(vine, axis) == e.buds);
            CHECK(distance_to_head(vine, axis).count == e.distance);
            CHECK(below_wire(vine, axis).count == e.below);
            CHECK(is_cane(vine, axis));
        }
    }
    TEST_CASE("a2 is last winter's laid cane, a3 last winter's spur") {
        CHECK(was_laid_last_winter(vine, *vine.find(AxisId{2})));
        CHECK(was_spur_last_winter(vine, *vine.find(AxisId{3})));
        CHECK_FALSE(was_spur_last_winter(vine, *vine.find(AxisId{2})));
        CHECK(cane_candidates(vine) == std::vector<AxisId>{AxisId{4}, AxisId{5}, AxisId{7}});
    }
}
