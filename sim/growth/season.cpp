#include "sim/growth/season.h"

#include "sim/growth/canes.h"
#include "sim/growth/dry_back.h"
#include "sim/growth/fruit.h"
#include "sim/growth/laws.h"
#include "sim/growth/thickening.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {
namespace {

// A young vine has not yet its site's capacity (our choice): the share of it in season s.
double young_share(const Constants& c, int s) {
    switch (s) {
    case 1:
    case 2:
    case 3: return c.young_share_3;
    case 4: return c.young_share_4;
    case 5: return c.young_share_5;
    case 6: return c.young_share_6;
    default: return 1.0;
    }
}

double site_capacity(const Vine& vine, const Constants& c) {
    const double per_m = vine.vigour == Vigour::low    ? c.capacity_per_m_low
                         : vine.vigour == Vigour::high ? c.capacity_per_m_high
                                                       : c.capacity_per_m_moderate;
    return per_m * in_m(vine.spacing);
}

// C of the coming season: held over the years once the vine is grown up, or moved by last season's crop against this
// winter's prunings.
double coming_capacity(const Vine& pruned, Mass prunings, const SeasonSettings& s) {
    const Constants& c = s.constants;
    const double share = young_share(c, pruned.winter + 1);
    if (pruned.capacity == 0) return s.site_capacity.value_or(site_capacity(pruned, c)) * share;
    const double held = pruned.capacity / 1000.0 * share / young_share(c, pruned.winter);
    if (!s.site_capacity || pruned.last_yield.count == 0 || prunings.count == 0) return held;
    return next_capacity(c, held, *s.site_capacity * share, in_g(pruned.last_yield) / in_g(prunings));
}

// What flowering, weather at the berries and harm do to the crop of one vine beyond what its shoots tell; 1 in the mean.
double luck_of_crop(const Vine& vine, const Constants& c, const Draws& draws) {
    if (!draws.scatter()) return 1.0;
    return numeric::exp(c.crop_sd * draws.normal(Trait::crop, static_cast<std::uint32_t>(vine.winter)) - c.crop_sd * c.crop_sd / 2);
}

} // namespace

double own_site_capacity(const Vine& vine, const Constants& c) {
    return vine.capacity == 0 ? site_capacity(vine, c) : vine.capacity / 1000.0 / young_share(c, vine.winter);
}

SeasonSettings trial_settings() {
    SeasonSettings settings;
    settings.constants = trial_constants();
    settings.thinning = settings.leaf_removal = false;
    settings.hedge_m = std::nullopt;
    return settings;
}

Vine season(const Vine& pruned, const SeasonSettings& settings, SeasonNotes* notes) {
    SeasonNotes own_notes;
    SeasonNotes& seen = notes ? *notes : own_notes;
    seen = {};
    const Draws draws(pruned.seed, settings.scatter);
    NextVine next = carry_over(pruned);
    dry_back(next, settings.constants, draws);
    const double capacity = coming_capacity(pruned, next.vine.last_prunings, settings);
    next.vine.capacity = rounded(1000.0 * capacity);
    const Spring spring = budburst(pruned, next, capacity, settings, draws, seen);
    const ShootLaw law(pruned, settings, capacity, spring.shoots);
    seen.shoots = spring.shoots;
    seen.mean_length_cm = law.mean_length_cm;
    seen.capacity = capacity;
    seen.reserves = as_share(pruned.reserves);
    Crop crop = crop_of(spring, capacity, seen.reserves, settings.constants);
    crop.yield_kg *= luck_of_crop(next.vine, settings.constants, draws);
    seen.fruiting = crop.fruiting;
    seen.bunches = crop.bunches;
    seen.yield_kg = crop.yield_kg;
    add_rings(next, settings.constants);
    grow_canes(next, spring, law, settings, draws, notes);
    mark_dead_wood(next);
    hold_area_rule(next, settings.constants);
    if (settings.site_capacity) {
        next.vine.last_yield = from_g(1000 * crop.yield_kg);
        next.vine.reserves = {
            rounded(1000 * next_reserves(settings.constants, seen.reserves, crop.fruiting, capacity))};
    }
    next.finish(static_cast<int>(settings.constants.base_buds_per_axis));
    return std::move(next.vine);
}

} // namespace spurwright::growth
