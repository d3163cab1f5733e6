#include "sim/balance/own_history.h"

#include <cmath>

#include "sim/balance/spread.h"

namespace spurwright::balance {

std::optional<OwnHistory> own_history(const std::vector<KeptYear>& years) {
    std::vector<double> buds_a_kg;
    for (const KeptYear& year : years)
        if (year.kg > 0 && year.buds > 0 && std::fabs(year.next_kg - year.kg) <= held_within * year.kg) buds_a_kg.push_back(year.buds / year.kg);
    if (static_cast<int>(buds_a_kg.size()) < fewest_years) return std::nullopt;
    const VineSpread spread = vine_spread(std::move(buds_a_kg));
    return OwnHistory{spread.n, spread.low, spread.median, spread.high};
}

} // namespace spurwright::balance
