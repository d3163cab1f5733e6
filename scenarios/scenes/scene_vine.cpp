#include "scenarios/scenes/scene_vine.h"

#include <algorithm>

#include "scenarios/commands/vine_source.h"
#include "scenarios/io/house_rules_file.h"

namespace spurwright::scenes {

Result<GrownSceneVine> grow_scene_vine(const Scene& scene, std::size_t number) {
    const SceneVine& wanted = scene.vines.at(std::min(number, scene.vines.size() - 1));
    auto found = commands::vine_of_code(wanted.code);
    if (!found) return failure(std::move(found.error()));
    GrownSceneVine grown{std::move(found->vine), std::move(found->code), wanted.switches, {}, {}};
    for (const growth::Temptation& temptation : wanted.switches) {
        auto made = growth::tempted(grown.vine, temptation);
        if (!made) return failure(std::move(made.error()));
        grown.vine = std::move(made->vine);
        grown.tempting.push_back(made->axis);
        grown.code.clear();
    }
    if (auto begun = prune(grown.vine, wanted.acts); !begun) return failure(std::move(begun.error()));
    grown.acts = wanted.acts;
    if (!grown.acts.edits.empty()) grown.code.clear(); // a code says no acts either
    return grown;
}

Result<rules::HouseRules> scene_house(const Scene& scene, const io::Assets& assets) {
    auto house = io::load_house_rules(scene.house_rules, assets);
    if (!house) return failure(std::move(house.error()));
    if (scene.target) house->rules.bud_load.target = scene.target;
    if (scene.frost) house->rules.standing.kickers = scene.frost->kickers;
    if (scene.weigh) house->rules.prunings_weighed.suckers = scene.weigh->suckers;
    return house->rules;
}

} // namespace spurwright::scenes
