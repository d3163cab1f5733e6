// A block of vines as somebody weighs and counts them in winter: rows of one site, each with its strong and weak places.
#pragma once

#include <vector>

#include "sim/growth/site.h"

namespace spurwright::test {

// A site of each system that is grown.
struct SystemSite {
    const char* name;
    growth::Site site;
};
std::vector<SystemSite> system_sites();

struct BlockVine {
    double prunings_kg = 0;   // one-year wood before any cut
    double count_shoots = 0;  // from the buds that were counted last winter
    double non_count = 0;     // of base and latent buds, suckers among them
    double bunches = 0, fruit_kg = 0;  // of last season, with the crop's memory on
    double trunk_mm = 0;      // 300 mm above the soil
    std::vector<double> nodes;  // of each cane, as it stands in winter

    double shoots() const { return count_shoots + non_count; }
    double grams_a_shoot() const { return 1000 * prunings_kg / shoots(); }
};

struct BlockWish {
    int vines = 250;
    std::uint64_t seed = 0;    // those of the vines count on from here
    int a_row = 50;            // vines in a row, each row with its own patches
    bool mixed_loads = false;  // last winter's buds by turns 0.7, 1, 1.3 and 1.6 times what the pruner leaves
};

// Needs a site that check() passes.
std::vector<BlockVine> block(growth::Site site, const BlockWish& wish);

}  // namespace spurwright::test
