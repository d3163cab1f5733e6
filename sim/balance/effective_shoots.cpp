#include "sim/balance/effective_shoots.h"

namespace spurwright::balance {

double effective_shoot(double d) { return d > 15 ? 2.0 : d >= 10 ? 1.0 : d >= 7 ? 0.5 : 0.0; }

double effective_shoots(const std::vector<double>& diameters) {
    double sum = 0;
    for (const double d : diameters) sum += effective_shoot(d);
    return sum;
}

double nodes_to_keep(double effective) { return effective + 5; }

} // namespace spurwright::balance
