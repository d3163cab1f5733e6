#include "scenarios/scenes/drawn_vine.h"

#include "scenarios/scenes/scene_vine.h"
#include "sim/core/hash.h"
#include "sim/planning/planning.h"
#include "sim/rules/judge.h"
#include "sim/vine/vine_code.h"

namespace spurwright::scenes {
namespace {

constexpr std::uint64_t drawn_seed_bits = (std::uint64_t{1} << 40) - 1;  // of a vine code

std::uint64_t seed_of(const Scene& scene, std::size_t number, int tried) {
    return hash_of(scene.name + " " + std::to_string(number) + " " + std::to_string(tried)) & drawn_seed_bits;
}

// Points to be had on it; nothing where it cannot be grown so, or offers no plan.
std::optional<Tenths> had_on(const Scene& scene, const SceneVine& vine, const rules::HouseRules& house) {
    Scene alone = scene;
    alone.vines = {vine};
    const auto grown = grow_scene_vine(alone, 0);
    if (!grown || rules::why_not_judged(grown->vine)) return std::nullopt;
    const auto best = planning::Planning(grown->vine, house).best();
    return best ? std::optional(best->points) : std::nullopt;
}

}  // namespace

SceneVine drawn_vine(const Scene& scene, std::size_t number, const rules::HouseRules& house, std::atomic<int>* tried) {
    SceneVine drawn = scene.vines[number % scene.vines.size()];
    const auto site = read_code(drawn.code);
    if (!site || !drawn.acts.edits.empty()) return drawn;
    drawn.spring = static_cast<int>(number % 1'000) + 1;
    SceneVine best = drawn;
    Tenths most{-1};
    for (int nth = 0; nth < most_drawn; ++nth) {
        if (tried) *tried = nth;
        CodedSite other = *site;
        other.seed = seed_of(scene, number, nth);
        drawn.code = print_code(other);
        const auto had = had_on(scene, drawn, house);
        if (!had || *had <= most) continue;
        most = *had;
        best = drawn;
        if (most >= to_be_had) break;
    }
    return best;
}

}  // namespace spurwright::scenes
