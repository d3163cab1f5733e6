// A point or a direction in metres, in doubles: geometry for pictures and picking starts here. Knows nothing of vines.
#pragma once

#include <cmath>

namespace spurwright::shape {

struct Vec3 {
    double x = 0, y = 0, z = 0;
    bool operator==(const Vec3&) const = default;
};

constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
constexpr Vec3 operator-(Vec3 a) { return {-a.x, -a.y, -a.z}; }
constexpr Vec3 operator*(double k, Vec3 a) { return {k * a.x, k * a.y, k * a.z}; }
constexpr double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vec3 cross(Vec3 a, Vec3 b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
constexpr Vec3 lerp(Vec3 a, Vec3 b, double t) { return a + t * (b - a); }
inline double length(Vec3 a) { return std::sqrt(dot(a, a)); }

// `otherwise` where `a` is too short to have a direction.
inline Vec3 unit(Vec3 a, Vec3 otherwise = {0, 1, 0}) {
    const double size = length(a);
    return size > 1e-12 ? (1 / size) * a : otherwise;
}

// Some unit vector square to the unit vector `t`.
inline Vec3 any_square_to(Vec3 t) { return unit(std::fabs(t.x) < 0.7 ? cross(t, {1, 0, 0}) : cross(t, {0, 0, 1})); }

// The part of `a` square to the unit vector `t`, as a unit vector.
inline Vec3 square_part(Vec3 a, Vec3 t) { return unit(a - dot(a, t) * t, any_square_to(t)); }

} // namespace spurwright::shape
