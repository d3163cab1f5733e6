// How many vines a figure needs. Plain numbers in any one unit.
#pragma once

namespace spurwright::balance {

inline constexpr int most_vines_needed = 100'000;

// Half of the interval in which the mean of n vines lies with this confidence, by Student where their deviation is a
// sample's, by the normal distribution where it is known. Needs n >= 2.
double half_width(double deviation, int n, double confidence);
double half_width_known(double deviation, int n, double confidence);

// The fewest vines whose half width is no larger; most_vines_needed where no fewer do. Needs wanted > 0.
int vines_for(double deviation, double wanted, double confidence);

// How many vines reach it where their deviation is known, as of a block weighed vine by vine: by the normal distribution,
// before rounding. Fewer than vines_for, whose deviation is itself a sample's. Needs wanted > 0.
double vines_for_known(double deviation, double wanted, double confidence);

// The fewest vines, the same ones each winter, with which a change of this size is told four times in five at a risk of
// one in twenty of telling one that is none (both usual, our choice); `deviation` is of the vines' own changes.
int vines_to_see(double change, double deviation);

} // namespace spurwright::balance
