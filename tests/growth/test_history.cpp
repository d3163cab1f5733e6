// Vines grown by their history.
#include <doctest/doctest.h>

#include "sim/growth/history.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"

using namespace spurwright;

TEST_SUITE("growth/history") {
    TEST_CASE("every winter of 40 vines is sound") {
        for (std::uint64_t seed = 0; seed < 40; ++seed) {
            growth::Site site;
            site.seed = seed;
            const auto winters = growth::grow_winters(site);
            REQUIRE(winters.has_value());
            for (const Vine& vine : *winters) {
                const auto broken = check_vine(vine);
                CAPTURE(seed);
                CAPTURE(vine.winter);
                if (broken) {
                    CAPTURE(broken->key.name);
                    FAIL("broken ", std::string(broken->key.name), " ", std::get<std::string>(broken->arguments[0].value));
                }
            }
        }
    }
}
