#include "sim/growth/history.h"

#include "sim/core/check.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/next_vine.h"
#include "sim/growth/season.h"
#include "sim/growth/training.h"
#include "sim/growth/variety.h"
#include "sim/vine/vine_check.h"

namespace spurwright::growth {
namespace {

constexpr int youngest = 3; // of a vine with a head

SeasonSettings settings_of(const Site& site) {
    SeasonSettings settings;
    const Variety& variety = variety_of(site);
    settings.constants = with_variety({}, variety);
    settings.tendrils_everywhere = variety.tendrils_everywhere;
    settings.thinning = site.thinning;
    settings.hedge_m = site.hedge_m;
    settings.machine_harvest = site.harvest == Harvest::machine;
    return settings;
}

// Plans made here are legal: a refusal is a bug.
Vine pruned(const Vine& vine, const Plan& plan) {
    auto cut = prune(vine, plan);
    if (!cut)
        check_failed(__FILE__, __LINE__, "a history plan is legal", std::string(cut.error().key.name),
                     cut.error().where.step);
    return std::move(*cut);
}

// Calls `seen` with every uncut vine from winter 3 on; gives the last.
template <class Seen>
Vine live_on(const Site& site, const Seen& seen) {
    const SeasonSettings settings = settings_of(site);
    Vine vine = planted(site);
    vine = drawn_up(pruned(vine, back_to_two_buds(vine)), site);
    vine = crowned(pruned(vine, topped_at_head_height(vine, site)), settings);
    seen(vine);
    while (vine.winter < site.age) {
        vine = season(pruned(vine, history_plan(vine, habits_in(site, vine.winter))), settings);
        seen(vine);
    }
    return vine;
}

} // namespace

Result<Vine> grow_vine(const Site& site) {
    if (auto fine = check(site); !fine) return failure(std::move(fine.error()));
    Vine vine = live_on(site, [](const Vine&) {});
    // A vine left unpruned for winters can outgrow the tables' limits: refused by name, as its file would be.
    if (auto broken = check_vine(vine)) return failure(std::move(*broken));
    return vine;
}

Result<Vine> grow_vine_of_any_age(const Site& site) {
    if (site.age != 1 && site.age != 2) return grow_vine(site);
    Site grown_up = site;
    grown_up.age = youngest;
    if (auto fine = check(grown_up); !fine) return failure(std::move(fine.error()));
    Vine vine = planted(site);
    return site.age == 1 ? std::move(vine) : drawn_up(pruned(vine, back_to_two_buds(vine)), site);
}

Result<Vine> grow_dead_vine(const Site& site) {
    if (auto fine = check(site); !fine) return failure(std::move(fine.error()));
    Site before = site;
    before.age = std::max(youngest, site.age - 1);
    const Vine last = live_on(before, [](const Vine&) {});
    NextVine dead = carry_over(pruned(last, history_plan(last, habits_in(site, last.winter))));
    for (Axis& axis : dead.vine.axes) axis.state = AxisState::dead;
    for (std::uint8_t& buds : dead.latent) buds = 0;
    dead.finish(0);
    if (auto broken = check_vine(dead.vine)) return failure(std::move(*broken));
    return std::move(dead.vine);
}

Result<std::vector<Vine>> grow_winters(const Site& site) {
    if (auto fine = check(site); !fine) return failure(std::move(fine.error()));
    std::vector<Vine> winters;
    live_on(site, [&](const Vine& vine) { winters.push_back(vine); });
    return winters;
}

} // namespace spurwright::growth
