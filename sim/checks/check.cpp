#include "sim/checks/check.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/core/check.h"

namespace spurwright::checks {

const Check& check_of(int id) {
    for (const Check& check : all_checks())
        if (check.id == id) return check;
    check_failed(__FILE__, __LINE__, "a check of this number", id, 0);
}

bool passes(const std::vector<Compared>& numbers) {
    return !numbers.empty() &&
           std::all_of(numbers.begin(), numbers.end(), [](const Compared& n) { return n.passes(); });
}

Compared near(std::string name, double expected, double tolerance, double got) {
    return {std::move(name), expected, expected - tolerance, expected + tolerance, got};
}

Compared within(std::string name, double low, double high, double got) {
    return {std::move(name), std::numeric_limits<double>::quiet_NaN(), low, high, got};
}

Compared share_near(std::string name, double expected, double share, double got) {
    return near(std::move(name), expected, std::fabs(share * expected), got);
}

Compared none(std::string name, double violations) { return {std::move(name), 0, 0, 0, violations}; }

} // namespace spurwright::checks
