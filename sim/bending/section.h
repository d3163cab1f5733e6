// A cane's round section: how stiff it is, how far its skin is stretched by a bend, how hard it is to cut through.
// Millimetres and newtons, so that a modulus is in N/mm2 = MPa.
#pragma once

#include <cmath>

#include "sim/core/numeric.h"

namespace spurwright::bending {

// Young's modulus of a dormant cane, MPa. Our choice until measured (bounds 1,500-6,000; other climbers up to 8,480 when
// young [rowe-climbers]; figures for vines exist [maderas-2020] and were not read). It takes no part in the strain of a
// cane that is laid, only in its sag and in the force of the hand.
inline constexpr double modulus_mpa = 3'000.0;

// Bending stiffness of a solid round section, N mm2: E pi d^4 / 64.
constexpr double stiffness(double modulus, double diameter_mm) {
    const double square = diameter_mm * diameter_mm;
    return modulus * numeric::pi * square * square / 64.0;
}

// Share by which the skin is stretched where a bend goes `curvature` (1/mm) beyond rest: d * curvature / 2.
constexpr double skin_strain(double diameter_mm, double curvature) {
    return 0.5 * diameter_mm * (curvature < 0 ? -curvature : curvature);
}

// Diameter of a round cane that a blade cuts through with this force, from the wood's strength in shear across the
// section: F = strength pi d^2 / 4 [ozdemir-cutting].
inline double diameter_of_cut(double force_n, double strength_mpa) {
    return std::sqrt(4.0 * force_n / (numeric::pi * strength_mpa));
}

}  // namespace spurwright::bending
