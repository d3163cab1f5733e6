// The history pruner: who pruned the vine through the years. Frozen: its numbers are its own and belong to the
// generator version of the vine code; it reads neither house rules nor judge nor search. Also makes a beginner's
// plan for any vine, with flawed habits.
#pragma once

#include <optional>

#include "sim/growth/site.h"
#include "sim/pruning/plan.h"

namespace spurwright::growth {

// What a pruner looks for. The defaults are the good pruner's; all our choice (DEVELOPERS.md).
struct PrunerHabits {
    int wanted_mm = 0;                   // distance to the head that costs nothing
    bool from_last_origin = false;       // wanted_mm counts from last winter's origin on that side
    int distance_points = 4;             // for each 10 mm besides the wanted distance
    int farther_points = 4;              // the same for what stands farther out than wanted
    int above_wire_mm = 0;               // a base may stand so far above the wire for nothing
    int above_points = 0;                // for each 10 mm above that, besides what any base above it costs
    double thin_mm = 8.0, fat_mm = 11.5; // thickness that costs nothing
    bool spurs = true;
    double load = 1.0;                      // of 15 count buds a metre
    double end_mm = 6.0;                    // a cane ends where it is thinner than this, from 6 buds on
    double stub_low = 1.5, stub_high = 1.5; // of older wood, in diameters
    bool cuts_nothing = false;              // neglect: only the hedge was cut
    std::optional<int> buds_a_cane;         // training: so many on each cane, whatever the load
};

// The habits of a character, winter and vine apart.
PrunerHabits habits_of(Pruner pruner);

// What this site's pruner did in a winter of its life (4 and younger: training; spells and neglect by the site's seed).
PrunerHabits habits_in(const Site& site, int winter);

// Count buds this pruner leaves on the whole vine: 15 a metre (our choice) by the load.
int buds_wanted(const Vine& vine, const PrunerHabits& habits);

// One whole plan by the vine's system (two canes, one cane or cordon; any other is pruned to two canes): old wood cleared, the rest taken off, spurs and canes cut to length, laid and tied. Legal on `vine`
// in full: prune(vine, plan) succeeds. Never fails; a side with nothing to choose stays bare.
Plan history_plan(const Vine& vine, const PrunerHabits& habits);

} // namespace spurwright::growth
