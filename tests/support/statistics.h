// Plain statistics of samples, for tests and plots. All need at least two values.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace spurwright::test {

using Sample = std::vector<double>;

inline double mean(const Sample& x) {
    double sum = 0;
    for (const double v : x) sum += v;
    return sum / static_cast<double>(x.size());
}

inline double covariance(const Sample& x, const Sample& y) {
    const double a = mean(x), b = mean(y);
    double sum = 0;
    for (std::size_t i = 0; i < x.size(); ++i) sum += (x[i] - a) * (y[i] - b);
    return sum / static_cast<double>(x.size() - 1);
}

inline double deviation(const Sample& x) { return std::sqrt(covariance(x, x)); }
inline double variation(const Sample& x) { return deviation(x) / mean(x); }
inline double correlation(const Sample& x, const Sample& y) { return covariance(x, y) / (deviation(x) * deviation(y)); }
inline double slope(const Sample& x, const Sample& y) { return covariance(x, y) / covariance(x, x); }

inline double skewness(const Sample& x) {
    const double m = mean(x), s = deviation(x);
    double sum = 0;
    for (const double v : x) sum += (v - m) * (v - m) * (v - m);
    return sum / static_cast<double>(x.size()) / (s * s * s);
}

inline Sample logarithms(Sample x) {
    for (double& v : x) v = std::log(v);
    return x;
}

// By linear interpolation between the ordered values; `share` 0 to 1.
inline double quantile(Sample x, double share) {
    std::sort(x.begin(), x.end());
    const double at = share * static_cast<double>(x.size() - 1);
    const auto below = static_cast<std::size_t>(at);
    const double rest = at - static_cast<double>(below);
    return below + 1 < x.size() ? x[below] * (1 - rest) + x[below + 1] * rest : x[below];
}

}  // namespace spurwright::test
