#include "sim/core/numeric.h"

#include <cmath>
#include <limits>

namespace spurwright::numeric {
namespace {

constexpr double ln2_high = 6.93147180369123816490e-01;
constexpr double ln2_low = 1.90821492927058770002e-10;
constexpr double ln2 = 0.69314718055994530942;

// e^r for |r| <= ln 2 / 2: Taylor to the 14th power, whose rest is below 1e-17.
double exp_near_zero(double r) {
    double sum = 1.0;
    for (int k = 14; k >= 1; --k) sum = 1.0 + r / k * sum;
    return sum;
}

double scaled(double value, int power) {
    if (power > 1023) return value * std::ldexp(1.0, 1023) * 2.0 * std::ldexp(1.0, power - 1024);
    return std::ldexp(value, power);
}

// 2 atanh(s) / s for s^2 <= 0.0295: thirteen terms, whose rest is below 1e-20.
double atanh_series(double s2) {
    double sum = 0.0;
    for (int k = 12; k >= 0; --k) sum = sum * s2 + 1.0 / (2 * k + 1);
    return 2.0 * sum;
}

struct Parts { int exponent; double log_mantissa; };

// x = 2^exponent * m with m in [sqrt(1/2), sqrt(2)).
Parts parts_of(double x) {
    int exponent = 0;
    double m = std::frexp(x, &exponent);
    if (m < 0.70710678118654752440) {
        m *= 2.0;
        --exponent;
    }
    const double s = (m - 1.0) / (m + 1.0);
    return {exponent, s * atanh_series(s * s)};
}

// atan for 0 <= x <= tan(pi/8).
double atan_small(double x) {
    const double x2 = x * x;
    double sum = 0.0;
    for (int k = 23; k >= 0; --k) sum = 1.0 / (2 * k + 1) - x2 * sum;
    return x * sum;
}

double atan_positive(double x) {
    constexpr double tan_pi_8 = 0.41421356237309504880;
    if (x > 1.0) return pi / 2 - atan_positive(1.0 / x);
    if (x > tan_pi_8) return pi / 4 + ((x < 1.0) ? -atan_small((1.0 - x) / (1.0 + x)) : 0.0);
    return atan_small(x);
}

double polynomial(const double* c, int degree, double x) {
    double sum = c[degree];
    for (int k = degree - 1; k >= 0; --k) sum = sum * x + c[k];
    return sum;
}

}  // namespace

double exp(double x) {
    if (x < -708.0) return 0.0;
    if (x > 709.7) return std::numeric_limits<double>::infinity();
    const double n = std::floor(x / ln2 + 0.5);
    const double r = (x - n * ln2_high) - n * ln2_low;
    return scaled(exp_near_zero(r), static_cast<int>(n));
}

double exp2(double x) {
    if (x < -1022.0) return 0.0;
    if (x >= 1024.0) return std::numeric_limits<double>::infinity();
    const double n = std::floor(x + 0.5);
    return scaled(exp_near_zero((x - n) * ln2), static_cast<int>(n));
}

double log(double x) {
    const Parts p = parts_of(x);
    return p.exponent * ln2_high + (p.exponent * ln2_low + p.log_mantissa);
}

double log2(double x) {
    const Parts p = parts_of(x);
    return p.exponent + p.log_mantissa / ln2;
}

double pow(double x, double y) {
    if (x == 0.0) return y == 0.0 ? 1.0 : 0.0;
    return exp2(y * log2(x));
}

SineCosine sincos(double a) {
    constexpr double half_pi_high = 1.57079632673412561417;
    constexpr double half_pi_low = 6.07710050650619224932e-11;
    const double n = std::floor(a / (pi / 2) + 0.5);
    const double r = (a - n * half_pi_high) - n * half_pi_low;
    const double r2 = r * r;
    double s = 0.0, c = 0.0;  // Taylor to the 17th and 18th power on |r| <= pi/4
    for (int k = 17; k >= 3; k -= 2) s = (1.0 - s) * r2 / ((k - 1) * k);
    for (int k = 18; k >= 2; k -= 2) c = (1.0 - c) * r2 / ((k - 1) * k);
    s = r - r * s;
    c = 1.0 - c;
    switch (static_cast<long long>(n) & 3) {
    case 0: return {s, c};
    case 1: return {c, -s};
    case 2: return {-s, -c};
    default: return {-c, s};
    }
}

double atan2(double y, double x) {
    if (x == 0.0 && y == 0.0) return 0.0;
    const double ax = std::fabs(x), ay = std::fabs(y);
    double angle = ax >= ay ? atan_positive(ay / ax) : pi / 2 - atan_positive(ax / ay);
    if (x < 0.0) angle = pi - angle;
    return y < 0.0 ? -angle : angle;
}

double acos(double x) {
    const double c = clamp(x, -1.0, 1.0);
    return atan2(std::sqrt((1.0 - c) * (1.0 + c)), c);
}

// 2/sqrt(pi) e^(-x^2) sum 2^n x^(2n+1) / (2n+1)!!: only positive terms, so nothing cancels; 1 beyond |x| = 6.
double erf(double x) {
    const double a = std::fabs(x);
    if (a > 6.0) return x < 0 ? -1.0 : 1.0;
    const double a2 = a * a;
    double sum = 0.0;
    for (int n = 120; n >= 0; --n) sum = 1.0 + sum * (2.0 * a2 / (2 * n + 3));
    const double value = 1.12837916709551257390 * exp(-a2) * a * sum;
    return x < 0 ? -value : value;
}

double normal_cdf(double z) { return 0.5 + 0.5 * erf(z / 1.41421356237309504880); }

double normal_quantile(double p) {
    static constexpr double a[] = {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
                                   1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
                                   3.3430575583588128105e4, 2.5090809287301226727e3};
    static constexpr double b[] = {1.0, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
                                   2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4,
                                   5.2264952788528545610e3};
    static constexpr double c[] = {1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
                                   3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
                                   2.27238449892691845833e-2, 7.74545014278341407640e-4};
    static constexpr double d[] = {1.0, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
                                   1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
                                   1.05075007164441684324e-9};
    static constexpr double e[] = {6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
                                   2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                   2.71155556874348757815e-5, 2.01033439929228813265e-7};
    static constexpr double f[] = {1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
                                   7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
                                   2.04426310338993978564e-15};
    const double q = p - 0.5;
    if (std::fabs(q) <= 0.425) {
        const double r = 0.180625 - q * q;
        return q * polynomial(a, 7, r) / polynomial(b, 7, r);
    }
    double r = std::sqrt(-log(q < 0 ? p : 1.0 - p));
    double value = 0.0;
    if (r <= 5.0) {
        r -= 1.6;
        value = polynomial(c, 7, r) / polynomial(d, 7, r);
    } else {
        r -= 5.0;
        value = polynomial(e, 7, r) / polynomial(f, 7, r);
    }
    return q < 0 ? -value : value;
}

}  // namespace spurwright::numeric
