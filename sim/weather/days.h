// Days and temperatures of one season, from autumn to autumn. Days are counted as in the north: day 1 is 1 January,
// the season begins on day -115 (7 September, day 250 of the year before, where the hardiness model starts), and the
// south is shifted by half a year, so that everything behind this header knows one calendar only.
#pragma once

#include <vector>

namespace spurwright::weather {

inline constexpr int first_day = -115; // day 250 of a year of 365, one year on
inline constexpr int last_day = 304;   // 31 October
inline constexpr int season_days = last_day - first_day + 1;

// Degrees Celsius of each day from first_day on. Shorter series are allowed; beyond their end nothing happens.
struct Temperatures {
    std::vector<double> mean, lowest;

    int end_day() const { return first_day + static_cast<int>(mean.size()); } // one past the last
    double mean_on(int day) const { return mean[static_cast<std::size_t>(day - first_day)]; }
    double lowest_on(int day) const { return lowest[static_cast<std::size_t>(day - first_day)]; }
};

// sum of max(0, mean - base) over days [from, to), in degree days.
double heat_sum(const Temperatures& t, double base, int from, int to);

// First day at whose end the sum from `from` on has reached `wanted`; end_day() where it never does.
int day_of_sum(const Temperatures& t, double base, int from, double wanted);

} // namespace spurwright::weather
