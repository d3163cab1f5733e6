// grow --tempt: tempting wrong canes on a grown vine, which then has no code; what is no switch, no side, no place.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "sim/growth/tempt.h"
#include "tests/cli/answered.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

namespace {

template <std::size_t i = 0>
std::vector<std::string> switch_names() {
    if constexpr (i == std::variant_size_v<growth::Temptation>) {
        return {};
    } else {
        auto names = switch_names<i + 1>();
        names.emplace_back(std::variant_alternative_t<i, growth::Temptation>::name);
        return names;
    }
}

} // namespace

TEST_SUITE("cli/grow switches") {
    TEST_CASE("every switch stands on a vine file without a code, which can be judged") {
        CHECK(switch_names().size() == 18);
        for (const std::string& name : switch_names()) {
            CAPTURE(name);
            const Folder folder;
            const std::string file = folder.file("v.json");
            const json plain = answered({"grow", "--seed", "12"}, "verb-grow");
            const json grown = answered({"grow", "--seed", "12", "--tempt", name + ":far", "-o", file}, "verb-grow");
            CHECK(grown["code"].is_null());
            CHECK(grown["hash"] != plain["hash"]);
            CHECK(grown["tempting"].size() == 1);
            CHECK(answered({"show", file}, "verb-grow")["hash"] == grown["hash"]);
            CHECK(answered({"best", file}, "verb-best")["plans"].size() == 1);
        }
    }
    TEST_CASE("several stand together; the same words grow the same vine") {
        const auto grown = [] { return answered({"grow", "--seed", "12", "--tempt", "fat-top-cane:near,trunk-sucker:far,climbed-head:far"}, "verb-grow"); };
        CHECK(grown()["tempting"].size() == 3);
        CHECK(grown() == grown());
    }
    TEST_CASE("an unknown switch, an unknown or missing side, a row and a vine without the place are refused") {
        CHECK(refused({"grow", "--seed", "1", "--tempt", "big-cane:near"}).starts_with("--tempt: \"big-cane\" is none of: fat-top-cane, far-cane"));
        CHECK(refused({"grow", "--seed", "1", "--tempt", "far-cane:left"}) == "--tempt: \"left\" is none of: near, far.");
        CHECK(refused({"grow", "--seed", "1", "--tempt", "far-cane"}) == "--tempt: \"\" is none of: near, far.");
        CHECK(refused({"grow", "--seed", "1", "--tempt", ""}).starts_with("--tempt: \"\" is none of: fat-top-cane"));
        CHECK(refused({"grow", "--seed", "1", "--tempt", "far-cane:near,"}).starts_with("--tempt: \"\" is none of: fat-top-cane"));
        CHECK(refused({"grow", "--seed", "1", "--graft", "no", "--tempt", "rootstock-sucker:near"}).find("This vine offers no place for \"rootstock-sucker\".") != std::string::npos);
        CHECK(refused({"grow", "--seed", "1", "--row", "3", "--tempt", "far-cane:near"}).find("Switches change one vine") != std::string::npos);
    }
}
