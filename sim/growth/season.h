// One season: from a vine as pruned in winter w to the vine of winter w + 1, uncut. Budburst, summer acts, growth,
// lignified form, thickening. Must not know: plans, rules, who pruned.
#pragma once

#include <optional>

#include "sim/growth/growth_constants.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

struct SeasonSettings {
    Constants constants;                  // practice by default
    bool scatter = true;                  // off: every draw at its mean, counts by running sums
    bool thinning = true;                 // S1
    bool leaf_removal = true;             // S2
    std::optional<double> hedge_m = 1.00; // S3: top above the fruiting wire; none: not hedged
    bool machine_harvest = false;
    std::optional<bool> tendrils_everywhere; // of a variety of one's own; none: as the table says of the vine's
    // The crop's memory (G11 to G14): C drawn back to what the site gives this vine, in shoots, and moved by the crop;
    // R by the load. None: capacity and reserves hold over the years, as for practice vines, and no crop is noted.
    std::optional<double> site_capacity;
};

// The setting in which published trials are compared: no summer acts, no handling loss, trial references.
SeasonSettings trial_settings();

// What went on, for checks and for the look ahead. Shoots are counted, not weighed.
struct SeasonNotes {
    int count_nodes = 0;      // N: live count nodes kept
    int burst = 0, blind = 0; // of them
    int non_count_pushed = 0, non_count_kept = 0;
    int doubles_pushed = 0, doubles_kept = 0;
    int suckers_kept = 0;
    double shoots = 0; // S, after thinning
    double mean_length_cm = 0;
    double capacity = 0, reserves = 1;              // C and R of this season
    double fruiting = 0, bunches = 0, yield_kg = 0; // S_f; all shoots
    // Wood of the summer as the tables weigh it (mg): all that grew, and what was off again before winter.
    double grown_mg = 0, thinned_mg = 0, leaf_removal_mg = 0, hedged_mg = 0, fallen_mg = 0; // fallen: unripe and weak
};

// The capacity that this vine's own place gives it once it is grown up: what its memory is drawn back to.
double own_site_capacity(const Vine& vine, const Constants& c);

// The next winter's vine. Needs a vine that passes check_vine; gives one that does. New axes are numbered after every
// id in the table; draws depend on the seed and these names alone.
Vine season(const Vine& pruned, const SeasonSettings& settings, SeasonNotes* notes = nullptr);

} // namespace spurwright::growth
