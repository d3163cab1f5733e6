// How many buds to leave: what the vine's weight asks for beside what its space holds, and the smaller of the two.
#pragma once

namespace spurwright::balance {

// Count buds a metre of row. The house's own 15 is the published number of shoots [wineskills-shape]; 12 and 17 are the
// ends of bud-load's full mark (our choice, within 13 to 20 of smith-2023).
struct SpaceBuds {
    double low = 0, house = 0, high = 0;
};
SpaceBuds buds_by_space(double spacing_m);

enum class Meeting { above, below, agree }; // where the number by weight lies against the space

struct BudTarget {
    double by_weight = 0;
    SpaceBuds by_space;
    double smaller = 0; // the advice: by weight, but never more than the space holds
    Meeting meeting{};
};
BudTarget bud_target(double by_weight, double spacing_m);

// Nearest whole bud, halves up (our choice).
int whole_buds(double buds);

// The charge: prunings over the weight of one ideal cane, and a share more for buds that will not break. 30 to 40 g a
// cane and 5 to 15 % [wineskills-factors]. Needs cane_g > 0.
double charge(double prunings_g, double cane_g, double blind_share);

// The same by counting last year's shoots: a weak one a half, an ideal one 1, a strong one 2 to 3 [wineskills-factors].
double charge_by_count(int weak, int ideal, int strong, double strong_counts);

} // namespace spurwright::balance
