// How the numbers of many vines lie: their middle, their spread, and whether one of them stands apart. Plain numbers in
// any one unit.
#pragma once

#include <vector>

namespace spurwright::balance {

struct VineSpread {
    int n = 0;
    double least = 0, low = 0, median = 0, high = 0, most = 0; // low and high: a quarter lies below, above
    double mean = 0;
    double deviation = 0;                                        // standard, over n - 1; 0 of fewer than two
    double variation() const { return mean > 0 ? deviation / mean : 0; }
};
VineSpread vine_spread(std::vector<double> values);

// Between the sorted values: of n the share s lies at s (n - 1). Needs a value and 0 <= share <= 1.
double quantile_of(const std::vector<double>& sorted, double share);

// Whether a number stands apart from others: farther than 3.5 times 1.4826 median distances from their median. Asked of
// six others at least. The form is usual (common practice, no source), both numbers our choice.
inline constexpr int fewest_to_compare = 6;
inline constexpr double odd_from = 3.5;
struct Middle {
    int n = 0;
    double median = 0, distance = 0; // the median, and the median distance from it
};
Middle middle_of(std::vector<double> values);
bool is_odd(double value, const Middle& others);

} // namespace spurwright::balance
