#include "sim/growth/history_pruner.h"

#include <cmath>

#include "sim/growth/cordon_pruner.h"
#include "sim/growth/history_choice.h"
#include "sim/growth/history_cuts.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {
namespace {

constexpr double buds_a_metre = 15;
constexpr int spur_buds = 2;
constexpr double gap_to_neighbour_mm = 50;
constexpr int wraps = 2; // half wraps

// Two canes, one each way, and a spur below each.
Plan two_cane_plan(const Vine& vine, const PrunerHabits& habits) {
    HistoryCuts cuts(vine, habits);
    const std::array<Chosen, 2> chosen{choose(vine, Side::left, habits), choose(vine, Side::right, habits)};
    for (const Chosen& side : chosen)
        for (const Axis* piece : {side.cane, side.spur})
            if (piece) cuts.keep(*piece);
    cuts.clear_old_wood();
    cuts.clear_canes();
    int on_spurs = 0;
    for (const Chosen& side : chosen) {
        if (!side.spur) continue;
        cuts.shorten(*side.spur, cuts.spur_end(*side.spur, spur_buds));
        on_spurs += cuts.spur_buds_of(*side.spur, spur_buds);
    }
    const int rest = std::max(2, buds_wanted(vine, habits) - on_spurs);
    const std::array<int, 2> shares{habits.buds_a_cane.value_or(rest - rest / 2),
                                    habits.buds_a_cane.value_or(rest / 2)};
    const double reach = in_mm(vine.spacing) / 2 - gap_to_neighbour_mm;
    for (std::size_t i = 0; i < 2; ++i)
        if (chosen[i].cane) cuts.lay(*chosen[i].cane, both_sides[i], shares[i], reach, wraps);
    return cuts.take();
}

// The way a single cane goes: away from last winter's, so that each side in turn brings its cane up on a spur.
Side turn_of(const Vine& vine) {
    for (const Laid& laid : vine.laid)
        if (laid.winter == vine.winter - 1) return other(laid.side);
    const bool right = Draws(vine.seed).chance(Trait::cane_side, 0, 0, 0.5);
    return right ? Side::right : Side::left;
}

// One cane to the side whose turn it is, or to the other where that side has none; a spur on the side it does not go
// to, for next winter's cane; where none can stand there, below the cane. It has the whole way to the next trunk.
Plan one_cane_plan(const Vine& vine, const PrunerHabits& habits) {
    PrunerHabits no_spur = habits;
    no_spur.spurs = false;
    Side side = turn_of(vine);
    Chosen chosen = choose(vine, side, no_spur);
    if (!chosen.cane) {
        side = other(side);
        chosen = choose(vine, side, no_spur);
    }
    if (habits.spurs) chosen.spur = best_spur(vine, other(side));
    if (habits.spurs && !chosen.spur) chosen = choose(vine, side, habits);
    HistoryCuts cuts(vine, habits);
    for (const Axis* piece : {chosen.cane, chosen.spur})
        if (piece) cuts.keep(*piece);
    cuts.clear_old_wood();
    cuts.clear_canes();
    int rest = buds_wanted(vine, habits);
    if (chosen.spur) {
        cuts.shorten(*chosen.spur, cuts.spur_end(*chosen.spur, spur_buds));
        rest -= cuts.spur_buds_of(*chosen.spur, spur_buds);
    }
    if (chosen.cane)
        cuts.lay(*chosen.cane, side, habits.buds_a_cane.value_or(std::max(2, rest)),
                 in_mm(vine.spacing) - gap_to_neighbour_mm, wraps);
    return cuts.take();
}

} // namespace

int buds_wanted(const Vine& vine, const PrunerHabits& habits) {
    return static_cast<int>(std::floor(habits.load * std::floor(buds_a_metre * in_m(vine.spacing) + 0.5) + 0.5));
}

Plan history_plan(const Vine& vine, const PrunerHabits& habits) {
    if (habits.cuts_nothing) return {};
    switch (vine.system) {
    case System::cordon: return cordon_plan(vine, habits);
    case System::one_cane: return one_cane_plan(vine, habits);
    default: return two_cane_plan(vine, habits);
    }
}

} // namespace spurwright::growth
