#include "sim/balance/effective_shoots.h"

namespace spurwright::balance {

double effective_shoot(double d) { return d > 15 ? 2.0 : d >= 10 ? 1.0 : d >= 7 ? 0.5 : 0.0; }

double effective_shoots(const std::vector<double>& diameters) {
    double sum = 0;
    for (const double d : diameters) sum += effective_shoot(d);
    return sum;
}

double nodes_to_keep(double effective) { return effective + 5; }

Burst burst_of(double effective, double nodes_kept) {
    const double ratio = effective / nodes_kept;
    return ratio < 0.90 ? Burst::blind : ratio > 1.10 ? Burst::non_count : Burst::in_order;
}

} // namespace spurwright::balance
