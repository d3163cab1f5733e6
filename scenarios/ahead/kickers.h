// After the frost: whether the laid canes live, and what is done with the canes that stand beside them. Must not know:
// weather draws, what grows then.
#pragma once

#include <array>
#include <vector>

#include "sim/pruning/plan.h"
#include "sim/weather/spring.h"

namespace spurwright::ahead {

// The buds of this winter's laid canes after the frost.
struct LaidBuds {
    int buds = 0, live = 0; // live: with their primary shoot
    double mean_day = 0;    // on which they open
    std::array<int, 2> of_side{}; // buds, left and right
    // Half of them live: our choice.
    bool sound() const { return buds == 0 || 2 * live >= buds; }
};
LaidBuds laid_buds(const Vine& after_frost, const std::vector<weather::OpenBud>& buds);

// Canes that stand upright and uncut with buds on them; not the laterals on them or on others.
std::vector<AxisId> kickers_of(const Vine& vine, const std::vector<weather::OpenBud>& buds);

// Off at its base.
Plan plan_off(AxisId kicker);
// Cut to as many buds as the dead cane of its side had, and laid in its place.
Plan plan_instead(const Vine& vine, AxisId kicker, const LaidBuds& laid);

} // namespace spurwright::ahead
