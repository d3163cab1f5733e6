// The scene that lets two choices grow on: what is shown is what really grew.
#include <doctest/doctest.h>

#include "scenarios/practice/grow_on.h"
#include "scenarios/scenes/scene_vine.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;
using namespace spurwright::practice;

namespace {

const io::Assets assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

struct FarBeauty {
    scenes::GrownSceneVine grown;
    planning::Planning planning;
    GrowOnWish wish;
    Side side() const { return grown.vine.find(wish.near)->side; }
    std::size_t at() const { return side() == Side::right ? 1 : 0; }
};

FarBeauty far_beauty(std::size_t number) {
    const auto scene = scenes::load_scene(assets, "far-beauty");
    REQUIRE(scene.has_value());
    REQUIRE(scene->grow_on == 5);
    auto grown = scenes::grow_scene_vine(*scene, number);
    REQUIRE(grown.has_value());
    const auto house = scenes::scene_house(*scene, assets);
    REQUIRE(house.has_value());
    planning::Planning planning(grown->vine, *house);
    const GrowOnWish wish{scene->grow_on, grown->tempting[0], grown->tempting[1]};
    return {*std::move(grown), std::move(planning), wish};
}

}  // namespace

TEST_CASE("the far choice starts far out and creeps on; the near choice stays near the head") {
    for (std::size_t number = 0; number < 5; ++number) {
        CAPTURE(number);
        const FarBeauty scene = far_beauty(number);
        const GrownOn grown = grow_on(scene.grown.vine, scene.grown.vine, scene.planning, scene.wish);
        REQUIRE(grown.winters.size() == 6);
        CHECK(grown.side == scene.side());
        CHECK_FALSE((grown.own_near || grown.own_far));
        const auto& first = grown.winters.front();
        CHECK(first.winter == scene.grown.vine.winter);
        CHECK(*first.near[scene.at()] == distance_to_head(scene.grown.vine, *scene.grown.vine.find(scene.wish.near)));
        CHECK(*first.far[scene.at()] == distance_to_head(scene.grown.vine, *scene.grown.vine.find(scene.wish.far)));
        const auto& last = grown.winters.back();
        REQUIRE(last.near[scene.at()].has_value());
        CHECK(*last.near[scene.at()] < Length{160'000});
        // Once out, out it stays; where no far cane can be laid any more, none is.
        if (last.far[scene.at()]) CHECK(*last.far[scene.at()] > *first.far[scene.at()]);
    }
}

TEST_CASE("a life that begins with the hand's own vine is that vine grown season by season") {
    const FarBeauty scene = far_beauty(0);
    const auto plan = scene.planning.best_laying(scene.wish.far, scene.side());
    REQUIRE(plan.has_value());
    const Vine own = *prune(scene.grown.vine, plan->plan);
    const GrownOn grown = grow_on(scene.grown.vine, own, scene.planning, scene.wish);
    CHECK(grown.own_far);
    CHECK_FALSE(grown.own_near);
    Vine pruned = own;
    for (std::size_t i = 1; i < grown.winters.size(); ++i) {
        const Vine next = growth::season(pruned, {});
        // A season notes where last winter's cane started.
        for (const Side side : both_sides)
            if (const auto start = grown.winters[i - 1].far[side == Side::right ? 1 : 0]) CHECK(next.origin(side) == *start);
        pruned = *prune(next, growth::history_plan(next, growth::habits_of(Pruner::far_canes)));
    }
}
