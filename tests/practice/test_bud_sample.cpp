// Buds cut open: they are the vine's own under the model's winter, counted once, and the share is theirs.
#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "scenarios/practice/practice.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

Vine vine_of(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed;
    return test::grown(site);
}

} // namespace

TEST_CASE("six buds from the base of up to eight middling canes; the same vine asks the same; the vine keeps its buds") {
    double off = 0, most = 0;
    int asks = 0;
    for (std::uint64_t seed = 0; seed < 24; ++seed) {
        const Vine vine = vine_of(seed);
        const std::uint64_t hash = vine_hash(vine);
        const BudSample sample(vine), again(vine);
        CHECK(vine_hash(vine) == hash);
        REQUIRE_FALSE(sample.canes().empty());
        CHECK(sample.canes().size() <= most_canes_sampled);
        std::set<AxisId> canes;
        for (std::size_t i = 0; i < sample.canes().size(); ++i) {
            const SampledCane& cane = sample.canes()[i];
            canes.insert(cane.cane);
            const auto nodes = ripe_count_nodes(vine, *vine.find(cane.cane));
            REQUIRE(cane.buds.size() == buds_a_cane);
            for (std::size_t n = 0; n < buds_a_cane; ++n) CHECK(index_of(cane.buds[n].node) == nodes[n]);
            CHECK(cane.dead() == again.canes()[i].dead());
        }
        CHECK(canes.size() == sample.canes().size());
        CHECK(sample.share() == doctest::Approx(static_cast<double>(sample.dead()) / sample.buds()));
        asks += sample.whole_share() > 0.1;
        off += std::fabs(sample.share() - sample.whole_share());
        most = std::max(most, std::fabs(sample.share() - sample.whole_share()));
    }
    CHECK(asks >= 20);    // a winter that asks for something is found nearly always
    CHECK(off / 24 < 0.08); // 48 buds: a standard error of 0.07 at most
    CHECK(most < 0.3);
}

TEST_CASE("primaries die first, tertiaries last") {
    int primary = 0, secondary = 0, tertiary = 0;
    for (std::uint64_t seed = 0; seed < 24; ++seed) {
        const BudSample sample(vine_of(seed));
        for (const SampledCane& cane : sample.canes())
            for (const OpenedBud& bud : cane.buds) {
                primary += !bud.primary;
                secondary += !bud.secondary;
                tertiary += !bud.tertiary;
            }
    }
    CHECK(primary > secondary);
    CHECK(secondary > tertiary);
}

TEST_CASE("a count is said once, only then the next cane comes, and the hand rests meanwhile") {
    Practice practice({vine_of(3), "", "", "general", {}, {}});
    REQUIRE(practice.begin_buds().has_value());
    CHECK(practice.hand_rests());
    BudSample& sample = *practice.buds();
    const std::size_t canes = sample.canes().size();
    sample.next();
    CHECK(sample.at() == 0);
    for (std::size_t i = 0; i < canes; ++i) {
        const int dead = sample.here()->dead();
        sample.answer(i == 0 ? dead + 1 : dead);
        sample.answer(dead); // the first stands
        CHECK(sample.here()->right() == (i > 0));
        sample.next();
    }
    CHECK(sample.here() == nullptr);
    CHECK(sample.right() == static_cast<int>(canes) - 1);
    practice.end_showing();
    CHECK_FALSE(practice.hand_rests());
    CHECK(vine_hash(practice.now()) == vine_hash(practice.start()));
}
