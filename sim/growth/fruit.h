// The crop of a season (steps G10 to G12): bunches by the wood a shoot stands on, its place and its bud.
#pragma once

#include "sim/growth/budburst.h"

namespace spurwright::growth {

// f of a shoot: 1 of a count bud's primary; less of a replacement, a double, a base or latent bud.
double fruiting_share(const Push& push, const Constants& c);

// Mean bunches of a shoot from full reserves: the parent's section, the place on the cane, the kind of bud.
double mean_bunches(const Push& push, const Constants& c);

struct Crop {
    double fruiting = 0; // S_f
    double bunches = 0, bunch_g = 0, yield_kg = 0;
};
// `reserves`: R of this season, 1 full.
Crop crop_of(const Spring& spring, double capacity, double reserves, const Constants& c);

} // namespace spurwright::growth
