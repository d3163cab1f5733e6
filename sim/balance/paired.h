// The same vines weighed in two winters: how much they changed on the mean, how far that may be off, and whether it can be
// told from nothing; and whether other vines changed by another measure. Student's distribution comes from a library; nothing here reaches a vine's tables.
#pragma once

#include <vector>

namespace spurwright::balance {

struct PairedChange {
    int pairs = 0;
    double mean = 0, deviation = 0; // of the differences, after less before
    bool tested = false;            // false: fewer than three pairs, or all changed alike
    double low = 0, high = 0;       // where the mean change lies with the confidence asked
    double t = 0, p = 1;            // two-sided: how often so much or more comes of nothing
};
// Needs lists as long as one another and 0 < confidence < 1.
PairedChange paired_change(const std::vector<double>& before, const std::vector<double>& after, double confidence);

// Two groups of different vines: what the second's mean has over the first's. Their spreads need not be alike (Welch's form
// of the test, its degrees of freedom by Satterthwaite's formula).
struct GroupDifference {
    int first = 0, second = 0;  // how many
    double mean = 0;            // of the second less of the first
    bool tested = false;        // false: fewer than three in one of them, or nothing varies
    double low = 0, high = 0;   // with the confidence asked
    double t = 0, freedom = 0, p = 1; // two-sided
};
GroupDifference group_difference(const std::vector<double>& first, const std::vector<double>& second, double confidence);

// A straight line through points, by least squares; how far the slope may be off, and the correlation.
struct LineFit {
    int points = 0;
    bool fitted = false; // false: fewer than four points, or all at one x
    double slope = 0, intercept = 0, r = 0;
    double slope_low = 0, slope_high = 0; // with the confidence asked
    double p = 1;                         // of no slope at all
};
LineFit line_through(const std::vector<double>& x, const std::vector<double>& y, double confidence);

} // namespace spurwright::balance
