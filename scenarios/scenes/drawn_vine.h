// Vines of a scene past those of its file: of the same site, age and temptations, with another seed. The same scene and number
// grow the same vine, so that work in progress and records need no more than these two. Must not know: who has seen which.
#pragma once

#include <atomic>

#include "scenarios/scenes/scene_file.h"
#include "sim/rules/house_rules.h"

namespace spurwright::scenes {

inline constexpr Tenths to_be_had{950};  // on a scene's own vines, as its tests ask (our choice)
inline constexpr int most_drawn = 60;    // seeds tried for one vine

// The first of the seeds drawn for this number on which the scene's temptations can be set and so many points can be had
// under its house; of none, the best. A scene whose vines begin with acts made gives its own again: acts belong to one vine.
// `tried`: told how many seeds were, for whoever waits in another thread.
SceneVine drawn_vine(const Scene& scene, std::size_t number, const rules::HouseRules& house, std::atomic<int>* tried = nullptr);

}  // namespace spurwright::scenes
