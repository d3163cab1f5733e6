#include "sim/growth/history.h"

#include "sim/core/check.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/growth/training.h"
#include "sim/growth/variety.h"
#include "sim/vine/vine_check.h"

namespace spurwright::growth {
namespace {

SeasonSettings settings_of(const Site& site) {
    SeasonSettings settings;
    settings.constants = with_variety({}, *find_variety(site.variety));
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

Result<std::vector<Vine>> grow_winters(const Site& site) {
    if (auto fine = check(site); !fine) return failure(std::move(fine.error()));
    std::vector<Vine> winters;
    live_on(site, [&](const Vine& vine) { winters.push_back(vine); });
    return winters;
}

} // namespace spurwright::growth
