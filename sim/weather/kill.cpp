#include "sim/weather/kill.h"

#include <algorithm>

#include "sim/core/numeric.h"

namespace spurwright::weather {

double killed_share(double temperature, double lt50, double sd) {
    return numeric::normal_cdf((lt50 - temperature) / sd);
}

double worst_margin(const HardinessCourse& course, const Temperatures& t, int until) {
    double worst = 100;
    for (int day = first_day; day < std::min(until, t.end_day()); ++day)
        worst = std::min(worst, t.lowest_on(day) - course.hardiness[static_cast<std::size_t>(day - first_day)]);
    return worst;
}

BudKill winter_kill(double margin, const growth::Constants& c) {
    return {killed_share(margin, 0, c.kill_sd), killed_share(margin, -c.secondary_hardier, c.kill_sd),
            killed_share(margin, -c.tertiary_hardier, c.kill_sd)};
}

} // namespace spurwright::weather
