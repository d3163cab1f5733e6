// The vine of a scene, grown from what the scene's file says of it, and the house it is judged under. Must not know:
// screens, work in progress.
#pragma once

#include "scenarios/scenes/scene_file.h"
#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"

namespace spurwright::scenes {

struct GrownSceneVine {
    Vine vine;
    std::string code;             // canonical; empty for a vine that no code grows
    std::vector<growth::Temptation> switches;
    std::vector<AxisId> tempting; // one a switch
    Plan acts{};                  // that it begins with; legal on it
};
// Vine `number` of the scene, from 0; past the last: the last.
[[nodiscard]] Result<GrownSceneVine> grow_scene_vine(const Scene& scene, std::size_t number);

// The scene's house with the scene's own number of buds, and of canes that stand for the frost.
[[nodiscard]] Result<rules::HouseRules> scene_house(const Scene& scene, const io::Assets& assets);

} // namespace spurwright::scenes
