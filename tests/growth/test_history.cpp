// Vines grown by their history: sound in every winter, the same every time, true to who pruned them.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "sim/core/hash.h"
#include "sim/growth/history.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;
using growth::Site;

namespace {

Site site_of(std::uint64_t seed, Pruner pruner = Pruner::good, int age = 12) {
    Site site;
    site.seed = seed;
    site.pruner = pruner;
    site.age = age;
    return site;
}

std::string broken(const Vine& vine) {
    const auto error = check_vine(vine);
    return error ? std::string(error->key.name) + " " + std::get<std::string>(error->arguments[0].value) : "";
}

struct Origins {
    double distance = 0, below = 0;
};

// Mean over both sides and `seeds` vines, of the canes laid in the eighth winter of this pruner's own.
Origins after_eight_winters(Pruner pruner, int seeds) {
    Origins mean;
    double distances = 0, canes = 0;
    for (int seed = 0; seed < seeds; ++seed) {
        const Vine vine = *growth::grow_vine(site_of(static_cast<std::uint64_t>(seed), pruner, 13));
        for (const auto& origin : {vine.origin_left, vine.origin_right})
            if (origin) mean.distance += in_mm(*origin), ++distances;
        for (const Axis& axis : vine.axes)
            if (was_laid_last_winter(vine, axis)) mean.below += in_mm(below_wire(vine, axis)), ++canes;
    }
    return {mean.distance / distances, mean.below / canes};
}

} // namespace

TEST_SUITE("growth/history") {
    TEST_CASE("check 40: after any winter laid canes are two years old and bear this summer's canes: 100 seeds, every "
              "pruner") {
        for (std::uint64_t seed = 0; seed < 100; ++seed) {
            for (std::size_t pruner = 0; pruner < words_of(Pruner{}).size(); ++pruner) {
                const auto winters =
                    growth::grow_winters(site_of(seed, static_cast<Pruner>(pruner), 9 + static_cast<int>(seed % 4)));
                REQUIRE(winters.has_value());
                for (const Vine& vine : *winters) {
                    CAPTURE(seed);
                    CAPTURE(pruner);
                    CAPTURE(vine.winter);
                    REQUIRE(broken(vine) == "");
                    for (const Laid& laid : vine.laid) {
                        if (laid.winter != vine.winter - 1) continue;
                        REQUIRE(age(vine, *vine.find(laid.axis)) == 2);
                    }
                    for (const Axis& axis : vine.axes) {
                        REQUIRE_FALSE(axis.removed);
                        if (!axis.parent) continue;
                        const Axis& bearer = *vine.find(axis_of(axis.parent));
                        REQUIRE(axis.born >= bearer.born);
                        if (was_laid_last_winter(vine, bearer)) REQUIRE(age(vine, axis) == 1);
                    }
                }
            }
        }
    }
    TEST_CASE(
        "check 40: far canes lie more than 150 mm further out and higher than the good pruner's after eight winters") {
        const Origins good = after_eight_winters(Pruner::good, 100), far = after_eight_winters(Pruner::far_canes, 100);
        CAPTURE(good.distance);
        CAPTURE(far.distance);
        CAPTURE(good.below);
        CAPTURE(far.below);
        CHECK(far.distance > good.distance + 150);
        CHECK(far.below < good.below);
    }
    TEST_CASE("the good pruner holds the head: origins move less than 3 mm a winter from winter 6 to 15, our choice") {
        double early = 0, late = 0, e = 0, l = 0;
        for (std::uint64_t seed = 0; seed < 100; ++seed) {
            const auto winters = *growth::grow_winters(site_of(seed, Pruner::good, 16));
            for (const Vine& vine : winters)
                for (const auto& origin : {vine.origin_left, vine.origin_right}) {
                    if (origin && vine.winter == 7) early += in_mm(*origin), ++e;
                    if (origin && vine.winter == 16) late += in_mm(*origin), ++l;
                }
        }
        CHECK(std::abs(late / l - early / e) / 9 < 3);
    }
    TEST_CASE("the same site gives the same vine") {
        for (std::uint64_t seed = 0; seed < 20; ++seed)
            CHECK(vine_hash(*growth::grow_vine(site_of(seed))) == vine_hash(*growth::grow_vine(site_of(seed))));
        CHECK(vine_hash(*growth::grow_vine(site_of(1))) != vine_hash(*growth::grow_vine(site_of(2))));
    }
    TEST_CASE("golden vines: a change here changes every vine a code names") {
        Hash all;
        for (std::uint64_t seed = 0; seed < 16; ++seed)
            all.add(hash_text(vine_hash(*growth::grow_vine(
                site_of(seed * 68'719'476'735u, static_cast<Pruner>(seed % 8), 3 + 2 * static_cast<int>(seed))))));
        CHECK(hash_text(all.value()) == "c0616db4ad66dd6f");
    }
    TEST_CASE("every corner of the settings grows a sound vine") {
        std::uint64_t seed = 0;
        for (const int age : {3, 4, 5, 12, 40})
            for (const double wire : {0.6, 1.4})
                for (const double head : {50.0, 300.0})
                    for (const double spacing : {0.9, 3.0}) {
                        ++seed;
                        Site site = site_of(seed, static_cast<Pruner>(seed % 8), age);
                        site.wire_m = wire;
                        site.head_below_mm = head;
                        site.spacing_m = spacing;
                        site.vigour = static_cast<Vigour>(seed % 3);
                        site.graft = seed % 2;
                        site.drip = seed % 5 > 0;
                        site.thinning = seed % 3 > 0;
                        if (seed % 4 == 0) site.hedge_m = std::nullopt;
                        if (seed % 7 == 0) site.catch_m = {};
                        const auto vine = growth::grow_vine(site);
                        REQUIRE(vine.has_value());
                        CAPTURE(seed);
                        CHECK(broken(*vine) == "");
                        CHECK(vine->winter == age);
                        CHECK(static_cast<bool>(vine->graft) == site.graft);
                    }
    }
    TEST_CASE("a site's words are on the vine: wires rising, neighbours, who stands where") {
        Site site = site_of(3);
        site.neighbours = growth::Neighbours::near;
        site.wires_in_winter = growth::WiresInWinter::dropped;
        const Vine vine = *growth::grow_vine(site);
        CHECK(vine.neighbour(Side::left).kind == NeighbourKind::vine);
        CHECK(vine.neighbour(Side::right).kind == NeighbourKind::none);
        CHECK(in_mm(vine.neighbour(Side::left).reach) == doctest::Approx(850));
        REQUIRE(vine.wires.size() == 5);
        CHECK(vine.wires[0].kind == WireKind::drip);
        CHECK(vine.wires[4].state == WireState::down);
        CHECK(fruiting_wire_height(vine) == from_mm(900));
    }
    TEST_CASE("check 43: growth includes neither rules nor planning, so no house rule can move a vine") {
        int files = 0;
        for (const auto& entry :
             std::filesystem::directory_iterator(std::filesystem::path(SPURWRIGHT_SOURCE) / "sim" / "growth")) {
            std::ifstream in(entry.path());
            std::stringstream text;
            text << in.rdbuf();
            CAPTURE(entry.path().string());
            CHECK(text.str().find("sim/rules/") == std::string::npos);
            CHECK(text.str().find("sim/planning/") == std::string::npos);
            ++files;
        }
        CHECK(files > 20);
    }
}
