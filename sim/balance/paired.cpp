#include "sim/balance/paired.h"

#include <cmath>

#include "sim/balance/spread.h"
#include "sim/balance/student.h"
#include "sim/core/check.h"

namespace spurwright::balance {

PairedChange paired_change(const std::vector<double>& before, const std::vector<double>& after, double confidence) {
    SPURWRIGHT_CHECK(before.size(), ==, after.size());
    std::vector<double> differences;
    for (std::size_t i = 0; i < before.size(); ++i) differences.push_back(after[i] - before[i]);
    const VineSpread spread = vine_spread(differences);
    PairedChange change{spread.n, spread.mean, spread.deviation};
    change.low = change.high = change.mean;
    if (change.pairs < 3 || !(change.deviation > 0)) return change;
    const double error = change.deviation / std::sqrt(static_cast<double>(change.pairs));
    const double reach = student_reach(confidence, change.pairs - 1) * error;
    change.tested = true;
    change.low = change.mean - reach;
    change.high = change.mean + reach;
    change.t = change.mean / error;
    change.p = student_p(change.t, change.pairs - 1);
    return change;
}

GroupDifference group_difference(const std::vector<double>& first, const std::vector<double>& second, double confidence) {
    const VineSpread a = vine_spread(first), b = vine_spread(second);
    GroupDifference difference{a.n, b.n, b.mean - a.mean};
    difference.low = difference.high = difference.mean;
    if (a.n < 3 || b.n < 3) return difference;
    const double of_a = a.deviation * a.deviation / a.n, of_b = b.deviation * b.deviation / b.n, both = of_a + of_b;
    if (!(both > 0)) return difference;
    difference.tested = true;
    difference.freedom = both * both / (of_a * of_a / (a.n - 1) + of_b * of_b / (b.n - 1));
    const double error = std::sqrt(both), reach = student_reach(confidence, difference.freedom) * error;
    difference.low = difference.mean - reach;
    difference.high = difference.mean + reach;
    difference.t = difference.mean / error;
    difference.p = student_p(difference.t, difference.freedom);
    return difference;
}

LineFit line_through(const std::vector<double>& x, const std::vector<double>& y, double confidence) {
    SPURWRIGHT_CHECK(x.size(), ==, y.size());
    LineFit line;
    line.points = static_cast<int>(x.size());
    const double mean_x = vine_spread(x).mean, mean_y = vine_spread(y).mean;
    double xx = 0, xy = 0, yy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx += (x[i] - mean_x) * (x[i] - mean_x);
        xy += (x[i] - mean_x) * (y[i] - mean_y);
        yy += (y[i] - mean_y) * (y[i] - mean_y);
    }
    // All alike: what stands there then is what the mean was rounded by, and a line through it is noise.
    const auto alike = [&](double squares, double mean) { return !(squares > 1e-20 * line.points * mean * mean); };
    if (line.points < 4 || alike(xx, mean_x) || alike(yy, mean_y)) return line;
    line.fitted = true;
    line.slope = xy / xx;
    line.intercept = mean_y - line.slope * mean_x;
    line.r = xy / std::sqrt(xx * yy);
    const double freedom = line.points - 2;
    const double left = yy - line.slope * xy; // squares that the line leaves
    const double error = std::sqrt((left > 0 ? left : 0) / freedom / xx);
    const double reach = student_reach(confidence, freedom) * error;
    line.slope_low = line.slope - reach;
    line.slope_high = line.slope + reach;
    line.p = error > 0 ? student_p(line.slope / error, freedom) : 0;
    return line;
}

} // namespace spurwright::balance
