// A row of vines: strong and weak places that change slowly along it.
#pragma once

#include <cstdint>
#include <vector>

#include "sim/growth/growth_constants.h"

namespace spurwright::growth {

// Share of the site's capacity that each place of a row has, besides the vine's own: ln is an AR(1) along the row, its
// sd and correlation our choice, so that neighbours are alike [taylor-2012]. Drawn by place: a longer row begins with
// the same places.
std::vector<double> row_patches(std::uint64_t row_seed, int vines, const Constants& c);

} // namespace spurwright::growth
