// The published trials as data: what each was, and the few settings that are its own. Everything else is the one set of
// constants (growth_constants.h) in the trial setting.
#pragma once

#include <string_view>
#include <vector>

#include "sim/growth/mean_vine.h"
#include "sim/growth/variety.h"

namespace spurwright::checks {

struct Trial {
    std::string_view name;
    std::string_view source;
    std::string_view variety;
    growth::TrialSite site; // C and k_m of the place: what of them was fitted on this trial stands in DEVELOPERS.md
    double parent_area_mm2 = 75;
};

// Sauvignon blanc, 10 to 72 nodes: capacity fitted to its shoots from base buds.
const Trial& sauvignon_trial();
// Two trials of drying grapes on wide trellises: one capacity for both, fitted.
const Trial& sunmuscat_trial();
const Trial& sultana_trial();
const Trial& concord_trial();

// Cabernet Sauvignon 1992 at two trellises: capacity and mass from the first of two prunings (`shoots`, `length_cm`).
struct TwoPoints {
    std::string_view source;
    double mass_scale;
    struct Point {
        double shoots, length_cm, mass_g;
    } first, second;
};
const TwoPoints& oakville_single_trial();
const TwoPoints& oakville_quad_trial();

// Constants of the trial setting with the trial's cultivar.
growth::Constants constants_of(const Trial& trial);

// So many canes of so many nodes; a last shorter one where `nodes` is no whole number of canes.
growth::KeptWood canes_of(int nodes, int a_cane);

} // namespace spurwright::checks
