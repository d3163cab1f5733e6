// Whole-number measures that cannot be mixed up. Integers add in any order to the same total, hash the same on
// every machine, and are finer than any rule, calliper or scale in the shed. A model may compute in doubles; it
// rounds once, when it writes. Knows nothing of vines.
#pragma once

#include <compare>
#include <cstdint>

namespace spurwright {

template <class Tag>
struct Measure {
    std::int32_t count = 0;  // in the unit named by the alias below

    constexpr auto operator<=>(const Measure&) const = default;
    constexpr Measure operator-() const { return {-count}; }
    constexpr Measure& operator+=(Measure other) { return count += other.count, *this; }
    constexpr Measure& operator-=(Measure other) { return count -= other.count, *this; }
    friend constexpr Measure operator+(Measure a, Measure b) { return {a.count + b.count}; }
    friend constexpr Measure operator-(Measure a, Measure b) { return {a.count - b.count}; }
};

using Length = Measure<struct micrometres>;          // up to 2.1 km
using Mass = Measure<struct milligrams>;             // up to 2.1 t
using Angle = Measure<struct millidegrees>;          // one angle, never a direction: directions come from places
using Tenths = Measure<struct tenths_of_a_point>;    // 1000 are a full total
using PerMille = Measure<struct thousandths>;        // shares, ratios and marks: 1000 is the whole
using Strain = Measure<struct parts_per_million>;    // relative lengthening of the outer skin of a bent cane

inline constexpr PerMille whole{1000};

constexpr double in_mm(Length l) { return l.count / 1000.0; }  // for people and for geometry only
constexpr double in_m(Length l) { return l.count / 1e6; }
constexpr double in_g(Mass m) { return m.count / 1000.0; }
constexpr double in_deg(Angle a) { return a.count / 1000.0; }
constexpr double in_points(Tenths t) { return t.count / 10.0; }
constexpr double as_share(PerMille p) { return p.count / 1000.0; }

// Nearest whole unit, halves away from zero. Needs |value| small enough for the measure.
constexpr std::int32_t rounded(double value) { return static_cast<std::int32_t>(value < 0 ? value - 0.5 : value + 0.5); }
constexpr Length from_mm(double mm) { return {rounded(mm * 1000.0)}; }
constexpr Mass from_g(double g) { return {rounded(g * 1000.0)}; }
constexpr Angle from_deg(double deg) { return {rounded(deg * 1000.0)}; }

namespace literals {
consteval Length operator""_mm(long double v) { return {static_cast<std::int32_t>(v * 1000 + 0.5L)}; }
consteval Length operator""_inch(long double v) { return {static_cast<std::int32_t>(v * 25'400 + 0.5L)}; }
consteval Angle operator""_deg(long double v) { return {static_cast<std::int32_t>(v * 1000 + 0.5L)}; }
consteval Mass operator""_g(long double v) { return {static_cast<std::int32_t>(v * 1000 + 0.5L)}; }
}  // namespace literals

}  // namespace spurwright
