// The scenes' first vines, by how hard they are to choose on: what is shown first is no harder than what tempts.
#include <doctest/doctest.h>

#include "scenarios/scenes/scene_vine.h"
#include "sim/planning/difficulty.h"

using namespace spurwright;

namespace {

const io::Assets assets(SPURWRIGHT_SOURCE "/assets");

planning::Difficulty difficulty_of_scene(std::string_view name, std::size_t number, bool with_switches = true) {
    auto scene = scenes::load_scene(assets, std::string(name));
    REQUIRE(scene.has_value());
    if (!with_switches)
        for (auto& vine : scene->vines) vine.switches.clear();
    const auto grown = scenes::grow_scene_vine(*scene, number);
    REQUIRE(grown.has_value());
    const auto house = scenes::scene_house(*scene, assets);
    REQUIRE(house.has_value());
    const auto found = planning::difficulty_of(grown->vine, *house, planning::Planning(grown->vine, *house));
    REQUIRE(found.has_value());
    return *found;
}

} // namespace

TEST_SUITE("scenes/difficulty") {
    TEST_CASE("the scenes' vines lie in the middle of the scale; the very first is the easiest first vine") {
        int very_first = 0;
        for (const std::string_view name : {"first", "old-or-new", "fat-one", "far-beauty"}) {
            std::string line(name);
            double sum = 0;
            for (std::size_t number = 0; number < 5; ++number) {
                const planning::Difficulty d = difficulty_of_scene(name, number);
                line += " " + std::to_string(d.scale);
                sum += d.scale / 5.0;
                if (name == "first" && number == 0) very_first = d.scale;
                if (name != "first" && number == 0) CHECK(d.scale > very_first);
                CHECK(d.good_plans >= 2);
                CHECK(d.scale > -1'500);
                CHECK(d.scale < 2'000);
            }
            MESSAGE(line << ", mean " << sum);
        }
    }
    TEST_CASE("what a scene puts on its vine does not make it easier, on the whole") {
        int harder = 0, vines = 0;
        for (const std::string_view name : {"fat-one", "far-beauty"})
            for (std::size_t number = 0; number < 5; ++number) {
                const int with = difficulty_of_scene(name, number).scale,
                          without = difficulty_of_scene(name, number, false).scale;
                ++vines;
                harder += with > without;
            }
        CHECK(harder >= vines * 7 / 10); // far-beauty's plain near cane is a good one more: two of its vines get easier
    }
}
