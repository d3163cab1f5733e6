#include "sim/balance/vines_needed.h"

#include <cmath>

#include "sim/balance/student.h"

namespace spurwright::balance {

double half_width(double deviation, int n, double confidence) {
    return student_reach(confidence, n - 1) * deviation / std::sqrt(static_cast<double>(n));
}

double half_width_known(double deviation, int n, double confidence) {
    return normal_reach(confidence) * deviation / std::sqrt(static_cast<double>(n));
}

int vines_for(double deviation, double wanted, double confidence) {
    int low = 1, high = most_vines_needed; // too few, enough; the half width only falls with n
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (half_width(deviation, middle, confidence) <= wanted ? high : low) = middle;
    }
    return high;
}

double vines_for_known(double deviation, double wanted, double confidence) {
    const double root = normal_reach(confidence) * deviation / wanted;
    return root * root;
}

int vines_to_see(double change, double deviation) {
    if (!(deviation > 0)) return 2;
    if (change < deviation / 100) return most_vines_needed;
    const double vines = std::ceil(student_freedom_to_see(change, deviation, 0.05, 0.2)) + 1;
    return vines < most_vines_needed ? static_cast<int>(vines) : most_vines_needed;
}

} // namespace spurwright::balance
