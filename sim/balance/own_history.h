// What a block's own years say of its buds: how many a kilogram of prunings its vines kept in the winters after which they
// stayed as strong as they were. It says what was done here and held, not what is best.
#pragma once

#include <optional>
#include <vector>

namespace spurwright::balance {

// One vine in one winter, and what it weighed the next.
struct KeptYear {
    double buds = 0, kg = 0, next_kg = 0;
};

struct OwnHistory {
    int years = 0;                         // that held
    double low = 0, median = 0, high = 0; // buds a kg: a quarter lies below, above
};

inline constexpr double held_within = 0.15; // of the weight before; our choice
inline constexpr int fewest_years = 6;      // that held; our choice

// Nothing where fewer than fewest_years held. Years with no prunings say nothing.
std::optional<OwnHistory> own_history(const std::vector<KeptYear>& years);

} // namespace spurwright::balance
