// The functions of the model that a C library may round differently from another: exponentials, logarithms, sines,
// the error function and the normal quantile by fixed polynomials, so that a vine code regrows the same vine
// everywhere. Built with -ffp-contract=off. std::sqrt is exact by IEEE 754 and is used as it is.
// Errors against long double libm are tested: relative 4e-16 (exp2, exp, sin, cos, atan2), 1e-15 (log, pow near 1), see
// tests/core/test_numeric.cpp for each bound.
#pragma once

namespace spurwright::numeric {

inline constexpr double pi = 3.14159265358979323846;

double exp2(double x);           // 0 below -1022, infinity above 1023
double exp(double x);
double log2(double x);           // needs x > 0
double log(double x);            // needs x > 0
double pow(double x, double y);  // needs x >= 0; pow(0, y > 0) = 0

struct SineCosine { double sine, cosine; };
SineCosine sincos(double radians);  // |radians| <= 1e5

double atan2(double y, double x);  // radians in (-pi, pi]; 0 for (0, 0)
double acos(double x);             // clamped to [-1, 1]

double erf(double x);
double normal_cdf(double z);
double normal_quantile(double p);  // needs 0 < p < 1 (Wichura's algorithm AS 241, coefficients from memory, tested against erf)

constexpr double degrees(double radians) { return radians * (180.0 / pi); }
constexpr double radians(double degrees) { return degrees * (pi / 180.0); }
constexpr double clamp(double x, double low, double high) { return x < low ? low : (x > high ? high : x); }

}  // namespace spurwright::numeric
