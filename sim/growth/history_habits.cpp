// Who pruned, and when: the characters and their spells.
#include <algorithm>

#include "sim/growth/history_pruner.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {
namespace {

constexpr int first_own_winter = 5; // before it a vine is trained
constexpr std::array flaws{Pruner::thin_wood, Pruner::far_canes, Pruner::no_spurs, Pruner::too_many_buds,
                           Pruner::flush_cuts};

// Winter w of a site's vine lies in [first, last].
bool between_winters(int winter, int first, int last) {
    return winter >= std::max(first, first_own_winter) && winter <= last;
}

Pruner character_in(const Site& site, int winter) {
    const Draws draws(site.seed);
    if (winter < first_own_winter) return Pruner::good;
    if (site.pruner == Pruner::neglect) {
        const int winters = draws.between(Trait::spell, 0, 0, 1, 3);
        return between_winters(winter, site.age - winters, site.age - 1) ? Pruner::neglect : Pruner::good;
    }
    if (site.pruner == Pruner::good_with_spell) {
        const int winters = draws.between(Trait::spell, 0, 1, 1, 8);
        const int first = draws.between(Trait::spell, 0, 2, first_own_winter, std::max(first_own_winter, site.age - 1));
        const auto flaw =
            static_cast<std::size_t>(draws.between(Trait::spell, 0, 3, 0, static_cast<int>(flaws.size()) - 1));
        return between_winters(winter, first, first + winters - 1) ? flaws[flaw] : Pruner::good;
    }
    return site.pruner;
}

} // namespace

PrunerHabits habits_of(Pruner pruner) {
    PrunerHabits h;
    switch (pruner) {
    case Pruner::good:
    case Pruner::good_with_spell: break;
    case Pruner::thin_wood:
        h.thin_mm = 4.5;
        h.fat_mm = 6.5;
        h.end_mm = 4.0;
        break;
    case Pruner::far_canes:
        h.wanted_mm = 50;
        h.from_last_origin = true;
        h.distance_points = 10;
        h.farther_points = 3;
        h.above_wire_mm = 50;
        h.above_points = 60;
        break;
    case Pruner::no_spurs: h.spurs = false; break;
    case Pruner::too_many_buds:
        h.load = 1.6;
        h.end_mm = 5.0;
        break;
    case Pruner::flush_cuts:
        h.stub_low = 0;
        h.stub_high = 0.3;
        break;
    case Pruner::neglect: h.cuts_nothing = true; break;
    }
    return h;
}

PrunerHabits habits_in(const Site& site, int winter) {
    PrunerHabits h = habits_of(character_in(site, winter));
    if (winter <= 3)
        h.buds_a_cane = 5; // two short canes
    else if (winter == 4)
        h.load = 0.5; // half the load of a grown-up vine
    return h;
}

} // namespace spurwright::growth
