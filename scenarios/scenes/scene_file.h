// A scene as a file of assets/scenes ("kind": "spurwright-scene"): five vines, the house, what is asked, how it begins,
// how a beginner prunes it, what it teaches. Shared by tests, screens and the command: a scene is never defined twice.
// Must not know: how its vines are grown (scene_vine.h), screens.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "scenarios/io/assets.h"
#include "sim/core/error.h"
#include "sim/growth/tempt.h"
#include "sim/pruning/plan.h"
#include "sim/vine/vine_code.h"

namespace spurwright::scenes {

// What comes before the vine is pruned. own: nothing.
enum class Begins : unsigned char { own, watch, old_or_new, questions };
constexpr auto words_of(Begins) { return std::to_array<std::string_view>({"own", "watch", "old-or-new", "questions"}); }

// What can be asked before the first cut; the answers are worked out from the vine (practice/scene_questions.h).
enum class Ask : unsigned char {
    job,        // which job is this vine
    by_weight,  // how many buds does its tag ask for
    by_space,   // how many does its space hold
    smaller,    // how many are left, then
    tell,       // what is told to the supervisor
    which_cane, // which of two canes of a side is laid
    when,       // when its spur is chosen
    tools,      // which tool for each of four cuts
};
constexpr auto words_of(Ask) { return std::to_array<std::string_view>({"job", "by-weight", "by-space", "smaller", "tell", "which-cane", "when", "tools"}); }

// One vine of a scene: grown from its code, then changed by each switch in turn.
struct SceneVine {
    std::string code;
    std::vector<growth::Temptation> switches{};
    int spring = 1; // the draw of weather of its spring, in a scene with frost
    Plan acts{};    // made before: the vine begins with them
};

// A scene with a second visit, in spring.
struct Frost {
    std::string climate; // a word of weather::climates()
    int over_day = 140;  // of the year, on which frost is over: the day of the visit
    int kickers = 1;     // canes that are to stand until then
};

// A scene whose vine is weighed each winter: after its pruning the prunings are weighed and next winter's buds said.
struct WeighAsked {
    std::string formula = "20+20"; // of balanced pruning, as the house writes it
    int winters = 5;               // of the vine's log, before this one
    bool suckers = false;          // whether the house weighs them
};

struct Scene {
    std::string name, house_rules;
    std::optional<std::int32_t> target; // count buds asked for where it is not the house's own number
    std::string title_key, task_key, teaches_key;
    Begins begins = Begins::own;
    std::vector<Ask> asks;               // in their order; none but where it begins with questions
    std::optional<Mass> tag;             // last winter's prunings, as the tag on the vine says
    int grow_on = 0;                     // winters that can be seen grown on afterwards; 0: not offered
    std::optional<Frost> frost;
    std::optional<WeighAsked> weigh;
    std::vector<SceneVine> vines;        // five, the first shown first
    std::vector<Pruner> beginner;        // the characters whose flaws the beginner has, together
    std::vector<std::string> learn_keys; // word keys of what is to be remembered
};

// Reads versions 1 (codes alone) and 2. Faults: bad_file, newer; a code that cannot be read.
[[nodiscard]] Result<Scene> load_scene(const io::Assets& assets, const std::string& name);

// Names of the scenes that there are, in the order a new crew walks them: assets/scenes/order.json.
[[nodiscard]] Result<std::vector<std::string>> load_scene_order(const io::Assets& assets);

} // namespace spurwright::scenes
