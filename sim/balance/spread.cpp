#include "sim/balance/spread.h"

#include <algorithm>
#include <cmath>

#include "sim/core/check.h"

namespace spurwright::balance {

double quantile_of(const std::vector<double>& sorted, double share) {
    SPURWRIGHT_CHECK(sorted.empty(), ==, false);
    const double place = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const double next = below + 1 < sorted.size() ? sorted[below + 1] : sorted[below];
    return sorted[below] + (next - sorted[below]) * (place - static_cast<double>(below));
}

VineSpread vine_spread(std::vector<double> values) {
    VineSpread spread;
    if (values.empty()) return spread;
    std::stable_sort(values.begin(), values.end());
    spread.n = static_cast<int>(values.size());
    spread.least = values.front();
    spread.low = quantile_of(values, 0.25);
    spread.median = quantile_of(values, 0.5);
    spread.high = quantile_of(values, 0.75);
    spread.most = values.back();
    for (const double value : values) spread.mean += value / spread.n;
    double squares = 0;
    for (const double value : values) squares += (value - spread.mean) * (value - spread.mean);
    spread.deviation = spread.n > 1 ? std::sqrt(squares / (spread.n - 1)) : 0;
    return spread;
}

Middle middle_of(std::vector<double> values) {
    Middle middle{static_cast<int>(values.size())};
    if (values.empty()) return middle;
    std::stable_sort(values.begin(), values.end());
    middle.median = quantile_of(values, 0.5);
    for (double& value : values) value = std::fabs(value - middle.median);
    std::stable_sort(values.begin(), values.end());
    middle.distance = quantile_of(values, 0.5);
    return middle;
}

bool is_odd(double value, const Middle& others) {
    return others.n >= fewest_to_compare && std::fabs(value - others.median) > odd_from * 1.4826 * others.distance;
}

} // namespace spurwright::balance
