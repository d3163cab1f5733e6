// The first three summers: planted, cut back, a stem drawn up and topped at head height, two crowns left at its top.
// The stem is one trunk axis all along: it is cut back and grows on.
#pragma once

#include "sim/growth/season.h"
#include "sim/growth/site.h"
#include "sim/pruning/plan.h"

namespace spurwright::growth {

// Winter 1, uncut: one shoot has grown. Needs a site that check() passes.
Vine planted(const Site& site);
Plan back_to_two_buds(const Vine& planted);

// Winter 2, uncut: the best shoot, tied up, is the stem. `cut` is winter 1's vine after its plan.
Vine drawn_up(const Vine& cut, const Site& site);
Plan topped_at_head_height(const Vine& drawn_up, const Site& site);

// Winter 3, uncut: the buds of the stem's top four nodes grew, two to a side. `cut` is winter 2's vine after its plan.
Vine crowned(const Vine& cut, const SeasonSettings& settings);

} // namespace spurwright::growth
