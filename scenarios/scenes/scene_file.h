// A scene as a file of assets/scenes ("kind": "spurwright-scene"): the vines by code, the house, how a beginner prunes
// it, what to learn. Shared by tests, screens and the command: a scene is never defined twice.
#pragma once

#include <string>
#include <vector>

#include "scenarios/io/assets.h"
#include "sim/core/error.h"
#include "sim/vine/vine_code.h"

namespace spurwright::scenes {

struct Scene {
    std::string name, house_rules;
    std::vector<std::string> codes;      // five vines, the first shown first
    std::vector<Pruner> beginner;        // the characters whose flaws the beginner has, together
    std::vector<std::string> learn_keys; // word keys of what the scene teaches
};

// Faults: bad_file, newer; a code that cannot be read.
[[nodiscard]] Result<Scene> load_scene(const io::Assets& assets, const std::string& name);

} // namespace spurwright::scenes
