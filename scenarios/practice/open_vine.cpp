#include "scenarios/practice/open_vine.h"

#include <algorithm>

#include "scenarios/commands/judged.h"
#include "scenarios/commands/vine_source.h"
#include "scenarios/io/house_rules_file.h"
#include "scenarios/io/vine_file.h"
#include "scenarios/scenes/drawn_vine.h"
#include "scenarios/scenes/scene_vine.h"
#include "sim/growth/history.h"
#include "sim/rules/judge.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr std::size_t most_scene_vines = 1'000;  // of one scene, grown ones among them
constexpr int most_tries = 20;          // seeds looked at for one next vine
constexpr std::size_t least_canes = 5;  // that a next vine offers: something to choose among (our choice)
constexpr int own_age_from = 7, own_ages = 12;  // winters of the vines after the scene's: our choice

// The near and the far cane of a scene that has both.
GrowOnWish grow_on_wish(const scenes::Scene& scene, const scenes::GrownSceneVine& grown) {
    GrowOnWish wish{scene.grow_on, {}, {}};
    for (std::size_t i = 0; i < grown.tempting.size(); ++i) {
        if (std::holds_alternative<growth::PlainNearCane>(grown.switches[i])) wish.near = grown.tempting[i];
        if (std::holds_alternative<growth::FarCane>(grown.switches[i])) wish.far = grown.tempting[i];
    }
    if (!wish.near || !wish.far) wish.winters = 0;
    return wish;
}

// A shipped set that is not meant for cordons says nothing of their spurs.
std::string house_for(const Vine& vine, const std::string& asked) {
    const bool shipped = std::find(io::shipped_house_sets.begin(), io::shipped_house_sets.end(), asked) != io::shipped_house_sets.end();
    return vine.system == System::cordon && shipped ? std::string(cordon_house) : asked;
}

}  // namespace

Result<Opened> open_code(const io::Assets& assets, const std::string& code, const std::string& house_name) {
    auto found = commands::vine_of_code(code);
    if (!found) return failure(std::move(found.error()));
    if (auto judged = commands::can_be_judged(found->vine, code); !judged) return failure(std::move(judged.error()));
    const std::string name = house_for(found->vine, house_name);
    auto house = io::load_house_rules(name, assets);
    if (!house) return failure(std::move(house.error()));
    return Opened{Task{std::move(found->vine), found->code, {}, name, house->rules, {}}, {}};
}

void ask_for(Task& task, const reference_vines::VineTarget& target) {
    task.house.bud_load.target = reference_vines::asked_buds(target).number;
    task.from_book = target;
}

Result<Opened> open_like(const io::Assets& assets, const reference_vines::VineTarget& target, const std::string& house_name, const std::function<std::uint64_t()>& fresh_seed) {
    const auto code = reference_vines::vine_like(target, fresh_seed);
    if (!code) return failure(code.error());
    auto opened = open_code(assets, *code, house_name);
    if (opened) ask_for(opened->task, target);
    return opened;
}

Result<Opened> open_scene(const io::Assets& assets, const std::string& name, std::size_t number, std::atomic<int>* tried) {
    auto scene = scenes::load_scene(assets, name);
    if (!scene) return failure(std::move(scene.error()));
    number = std::min(number, most_scene_vines);
    auto house = scenes::scene_house(*scene, assets);
    if (!house) return failure(std::move(house.error()));
    if (number >= scene->vines.size()) scene->vines.resize(number + 1, scenes::drawn_vine(*scene, number, *house, tried));
    auto grown = scenes::grow_scene_vine(*scene, number);
    if (!grown) return failure(std::move(grown.error()));
    if (auto judged = commands::can_be_judged(grown->vine, name); !judged) return failure(std::move(judged.error()));
    const GrowOnWish wish = grow_on_wish(*scene, *grown);
    Task task{std::move(grown->vine), std::move(grown->code), name,          scene->house_rules, *std::move(house),
              scene->learn_keys,      number,                 scene->task_key, scene->begins,      wish,
              scene->frost,           scene->vines[number].spring,           scene->asks,     scene->tag, std::move(grown->acts), scene->weigh};
    return Opened{std::move(task), *std::move(scene)};
}

Result<Opened> open_work(const io::Assets& assets, const settings::Work& work, const std::string& vine_path) {
    if (work.number) return open_scene(assets, work.scene, *work.number);
    Vine vine;
    if (!work.code.empty()) {
        auto found = commands::vine_of_code(work.code);
        if (!found) return failure(std::move(found.error()));
        vine = std::move(found->vine);
    } else {
        auto file = io::load_vine_file(vine_path);
        if (!file) return failure(std::move(file.error()));
        vine = std::move(file->vine);
    }
    auto house = io::load_house_rules(work.house, assets);
    if (!house) return failure(std::move(house.error()));
    Opened opened{Task{std::move(vine), work.code, work.scene, work.house, house->rules, {}}, {}};
    if (work.from_book) ask_for(opened.task, *work.from_book);
    return opened;
}

Result<std::string> next_code(const std::function<std::uint64_t()>& fresh_seed, System system) {
    for (int i = 0; i < most_tries; ++i) {
        growth::Site site;
        site.system = system;
        site.seed = fresh_seed() & ((std::uint64_t{1} << 40) - 1);
        site.age = own_age_from + static_cast<int>(site.seed % own_ages);
        const auto coded = growth::coded(site);
        if (!coded) continue;
        const auto vine = growth::grow_vine(site);
        if (!vine || rules::why_not_judged(*vine) || (i + 1 < most_tries && cane_candidates(*vine).size() < least_canes)) continue;
        return print_code(*coded);
    }
    return failure({Fault::bad_file, {"screen.message.no-next-vine"}, {}, {}});
}

Result<std::vector<SceneLine>> scene_lines(const io::Assets& assets) {
    const auto names = scenes::load_scene_order(assets);
    if (!names) return failure(names.error());
    std::vector<SceneLine> lines;
    for (const std::string& name : *names) {
        auto scene = scenes::load_scene(assets, name);
        if (!scene) return failure(std::move(scene.error()));
        lines.push_back({name, scene->title_key, scene->task_key, scene->vines.size()});
    }
    return lines;
}

}  // namespace spurwright::practice
