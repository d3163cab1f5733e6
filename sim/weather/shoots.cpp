#include "sim/weather/shoots.h"

#include <algorithm>

#include "sim/core/numeric.h"

namespace spurwright::weather {

double leaves(int burst_day, int day, const Temperatures& t, const growth::Constants& c) {
    return heat_sum(t, c.gdd_base, burst_day, day + 1) / c.phyllochron;
}

double nodes_on(int burst_day, int day, const Temperatures& t, const growth::Constants& c) {
    return c.nodes_at_burst + leaves(burst_day, day, t, c);
}

double extension(double phyllochrons, const growth::Constants& c) {
    // From a hundredth to ninety-nine hundredths over the span.
    const double steep = 2 * numeric::log(99.0) / c.internode_extension;
    return 1.0 / (1.0 + numeric::exp(-steep * (phyllochrons - c.internode_extension / 2)));
}

int released_day(int act_day, const Temperatures& t, const growth::Constants& c) {
    return day_of_sum(t, c.gdd_base, act_day, c.release_sum);
}

} // namespace spurwright::weather
