#include "scenarios/quiz/ground.h"

#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/planning/eye_noise.h"

namespace spurwright::quiz {
namespace {

constexpr int youngest = 6, oldest = 18;  // winters: our choice

}  // namespace

growth::Site crew_site(std::uint64_t seed) {
    growth::Site site;
    site.seed = seed & ((std::uint64_t{1} << 40) - 1);
    site.age = between(mix(seed), youngest, oldest);
    return site;
}

std::optional<Ground> ground_of(std::uint64_t seed, const rules::HouseRules& house) {
    const growth::Site site = crew_site(seed);
    auto vine = growth::grow_vine(site);
    if (!vine) return std::nullopt;
    const rules::Offers offers = rules::offers(*vine, house);
    const rules::Asked asked = rules::asked(offers, house);
    if (!asked.cane[0] || !asked.cane[1]) return std::nullopt;
    planning::Planning planning(*vine, house);
    auto best = planning.best();
    if (!best) return std::nullopt;
    const Tenths tolerance = planning::tolerance(*vine, house, best->plan);
    const auto coded = growth::coded(site);
    return Ground{*std::move(vine), coded ? print_code(*coded) : "", house, offers, asked, std::move(planning), *std::move(best), tolerance, seed};
}

}  // namespace spurwright::quiz
