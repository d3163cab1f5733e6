// Effective shoot number: last winter's canes counted by thickness, and the nodes to keep from it [trought-2017].
#pragma once

#include <vector>

namespace spurwright::balance {

// Thicker than 15 mm counts 2, 10 to 15 counts 1, 7 to 10 a half, thinner nothing.
double effective_shoot(double diameter_mm);
double effective_shoots(const std::vector<double>& diameters_mm);

// Five nodes more than effective shoots.
double nodes_to_keep(double effective);

// A winter later, effective shoots over nodes kept: below 0.90 buds stayed blind, above 1.10 many shoots came from
// elsewhere.
enum class Burst { blind, in_order, non_count };
Burst burst_of(double effective, double nodes_kept);

} // namespace spurwright::balance
