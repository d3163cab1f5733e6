// How cold kills buds: a probit about the temperature that half of them survive.
#pragma once

#include "sim/weather/hardiness.h"

namespace spurwright::weather {

// Phi((lt50 - temperature) / sd): the share of buds dead at this temperature.
double killed_share(double temperature_c, double lt50_c, double sd_c);

// The worst night of a winter as a bud feels it: the lowest of (night's lowest - H), in C, over the days before buds
// open (`until`, not included). Far above 0: nothing freezes.
double worst_margin(const HardinessCourse& course, const Temperatures& t, int until);

struct BudKill {
    double primary = 0, secondary = 0, tertiary = 0; // shares
};
// Secondary and tertiary buds stand a few degrees more.
BudKill winter_kill(double margin_c, const growth::Constants& c);

} // namespace spurwright::weather
