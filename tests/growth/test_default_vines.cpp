// What default vines hold besides the published demands (checks 41, 42 and 47: tests/checks).
#include <doctest/doctest.h>

#include "sim/checks/census.h"
#include "tests/support/full_size.h"

using namespace spurwright;

TEST_SUITE("growth/default-vines") {
    TEST_CASE("every default vine has at least four candidates, nearly every one on both sides, our choice") {
        const int vines = test::sized(300, 10'000); // SPURWRIGHT_FULL
        int four = 0, both = 0;
        for (int seed = 0; seed < vines; ++seed) {
            growth::Site site;
            site.seed = static_cast<std::uint64_t>(seed);
            const Vine vine = *growth::grow_vine(site);
            const auto found = checks::candidates(vine);
            bool any[3] = {false, false, false};
            for (const checks::Measured& m : found) any[static_cast<int>(m.axis->side)] = true;
            four += found.size() >= 4;
            both += any[1] && any[2];
        }
        CHECK(four == vines);
        CHECK(both >= 0.99 * vines);
    }
}
