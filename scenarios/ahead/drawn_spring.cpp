#include "scenarios/ahead/drawn_spring.h"

#include "sim/core/random.h"
#include "sim/growth/traits.h"

namespace spurwright::ahead {
namespace {

// Where spring frost is common the cold air lies: its nights are colder than the climate's. Own temperatures are as
// measured.
weather::Temperatures season_of(const AheadWish& wish, bool frost_site, const growth::Constants& c,
                                std::uint32_t draw_number, std::uint32_t year) {
    if (wish.own.empty()) {
        weather::Temperatures t = weather::drawn_season(*wish.climate, c, draw_number, year);
        if (frost_site)
            for (double& night : t.lowest) night -= c.frost_site_colder;
        return t;
    }
    const auto bits = draw(draw_number, static_cast<std::uint32_t>(growth::Trait::weather), year);
    return wish.own[static_cast<std::size_t>(between(bits, 0, static_cast<std::int32_t>(wish.own.size()) - 1))];
}

} // namespace

DrawnSpring drawn_spring(const Vine& pruned, const AheadWish& wish, const growth::Constants& c,
                         std::uint32_t draw_number, std::uint32_t year) {
    DrawnSpring spring;
    spring.temperatures = season_of(wish, pruned.frost, c, draw_number, year);
    const weather::Temperatures& t = spring.temperatures;
    spring.open = weather::budbreak(*wish.variety, t, c);
    const auto* row = weather::find_hardiness(wish.variety->hardiness);
    if (row && spring.open.rule == weather::BudbreakRule::hardiness)
        spring.kill =
            weather::winter_kill(weather::worst_margin(weather::harden(*row, t), t, spring.open.day), c);
    spring.buds = weather::opening(pruned, spring.open.day, year == 0 ? wish.late : weather::LateActs{}, t, c);
    spring.frost_share = weather::frost_losses(spring.buds, spring.open.day, wish.variety->species, t, c);
    return spring;
}

} // namespace spurwright::ahead
