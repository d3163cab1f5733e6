// The shoots of a season by the day: leaves by heat, joints stretching, and buds that a growing tip of the same axis
// holds back until it is cut or laid flat.
#pragma once

#include "sim/weather/budbreak.h"

namespace spurwright::weather {

// Leaves unfolded since `burst_day`, at the end of `day`; a fraction of the next counts.
double leaves(int burst_day, int day, const Temperatures& t, const growth::Constants& c);

// Nodes of a shoot on a day, with those it had in the bud [pratt-coombe for their number at bloom].
double nodes_on(int burst_day, int day, const Temperatures& t, const growth::Constants& c);

// Share of its final length that a joint has, `phyllochrons` after it appeared: logistic, over five (our choice).
double extension(double phyllochrons, const growth::Constants& c);

// When buds open that a tip of their own axis held until it was cut or laid on `act_day`: the day that gathers the
// release sum from then on [gatti-2016]. end_day() where the season ends before.
int released_day(int act_day, const Temperatures& t, const growth::Constants& c);

} // namespace spurwright::weather
