// A vine of mean shoots: the year's laws (G3 to G14) on numbers alone, every draw at its mean. What published trials,
// which give means of many vines, are compared with; season() does the same on tables. Must not know: weather, tables.
#pragma once

#include <vector>

#include "sim/growth/growth_constants.h"

namespace spurwright::growth {

// How one year's vine was pruned: count nodes on each cane and spur, and the section of wood they stand on.
struct KeptWood {
    std::vector<int> nodes;
    double parent_area_mm2 = 75; // about 9.8 mm
};

struct MeanVine {
    double capacity = 54; // C, shoots
    double reserves = 1;  // R
};

// What a year brought.
struct MeanYear {
    double count_nodes = 0, burst = 0, blind = 0, blind_basal = 0; // blind_basal: in the lower half of their cane
    double non_count = 0, doubles = 0, shoots = 0;                 // shoots: S
    double fruiting = 0;                                           // S_f
    double bunches = 0, bunches_on_canes = 0;                      // of the vine; of the shoots of count nodes
    double length_cm = 0, mass_g = 0, base_mm = 0;                 // of the mean shoot
    double bunch_g = 0, yield_kg = 0, prunings_kg = 0;
    double crop_to_prunings = 0; // RI
    double reserves = 1;         // R of this year
};

struct TrialSite {
    double capacity = 54;    // C_site
    double length_ref = 125; // cm
    double mass_scale = 1.0; // k_m
};

// Grows `vine` through one year and leaves in it what the next begins with. The nodes kept of next winter are taken as
// this year's. Needs a count node and capacity above 0.
MeanYear grow_year(MeanVine& vine, const KeptWood& kept, const TrialSite& site, const Constants& c);

// `years` of the same pruning, from full reserves and the site's capacity.
std::vector<MeanYear> grow_years(int years, const KeptWood& kept, const TrialSite& site, const Constants& c);

} // namespace spurwright::growth
