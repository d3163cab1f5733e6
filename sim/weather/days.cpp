#include "sim/weather/days.h"

#include <algorithm>

namespace spurwright::weather {

double heat_sum(const Temperatures& t, double base, int from, int to) {
    double sum = 0;
    for (int day = std::max(from, first_day); day < std::min(to, t.end_day()); ++day)
        sum += std::max(0.0, t.mean_on(day) - base);
    return sum;
}

int day_of_sum(const Temperatures& t, double base, int from, double wanted) {
    double sum = 0;
    for (int day = std::max(from, first_day); day < t.end_day(); ++day) {
        sum += std::max(0.0, t.mean_on(day) - base);
        if (sum >= wanted) return day;
    }
    return t.end_day();
}

} // namespace spurwright::weather
