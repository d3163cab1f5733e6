// Checks 32 and 33: how many buds to keep.
#include "sim/balance/bud_formula.h"
#include "sim/balance/effective_shoots.h"
#include "sim/checks/compared.h"
#include "sim/core/units.h"

namespace spurwright::checks {

Numbers balanced_buds() { return {near("", 40, 0, rounded(balance::buds_for({20, 20}, 0.907).buds))}; }

Numbers effective_shoots() {
    std::vector<double> canes;
    for (const auto& [count, d] : {std::pair{10, 12.0}, std::pair{4, 8.0}, std::pair{2, 16.0}, std::pair{3, 6.0}})
        canes.insert(canes.end(), static_cast<std::size_t>(count), d);
    return {near("", 21, 0, balance::nodes_to_keep(balance::effective_shoots(canes)))};
}

} // namespace spurwright::checks
