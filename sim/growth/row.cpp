#include "sim/growth/row.h"

#include <cmath>

#include "sim/growth/traits.h"

namespace spurwright::growth {

std::vector<double> row_patches(std::uint64_t row_seed, int vines, const Constants& c) {
    const Draws draws(row_seed);
    const double fresh = std::sqrt(1.0 - c.row_corr * c.row_corr);
    std::vector<double> shares;
    double z = 0;
    for (int place = 0; place < vines; ++place) {
        const double drawn = draws.normal(Trait::patch, static_cast<std::uint32_t>(place));
        z = place == 0 ? drawn : c.row_corr * z + fresh * drawn;
        shares.push_back(numeric::exp(c.row_patch_sd * z));
    }
    return shares;
}

} // namespace spurwright::growth
