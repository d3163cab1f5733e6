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
#include "tests/support/grown.h"

using namespace spurwright;
using test::broken;
using growth::Site;

namespace {

Site site_of(std::uint64_t seed, Pruner pruner = Pruner::good, int age = 12) {
    Site site;
    site.seed = seed;
    site.pruner = pruner;
    site.age = age;
    return site;
}

} // namespace

TEST_SUITE("growth/history") {
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
        CHECK(hash_text(all.value()) == "f35727e883f7811a");
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
