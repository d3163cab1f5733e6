// Marks of number ranges: 1000 per mille inside `full`, falling in a line to 0 at the ends of `half`. The one place
// where a mark is worked out from a number; whole numbers only, rounded down.
#pragma once

#include <algorithm>
#include <limits>

#include "sim/core/units.h"

namespace spurwright::rules {

// Largest count of a measure: an end that is open ("at least 6 mm").
inline constexpr std::int32_t open_end = std::numeric_limits<std::int32_t>::max();

template <class M>
struct Range {
    M low, high;
    auto operator<=>(const Range&) const = default;
};

template <class M>
struct Band {
    Range<M> full, half;  // needs half.low <= full.low <= full.high <= half.high
    auto operator<=>(const Band&) const = default;
};

inline constexpr PerMille no_mark{0}, half_mark{500}, full_mark{1000};

// 1000 part / whole, rounded down. Needs 0 <= part <= whole, whole > 0.
constexpr PerMille share_of(std::int64_t part, std::int64_t whole) {
    if (whole <= 0) return no_mark;
    return {static_cast<std::int32_t>(1000 * part / whole)};
}

// An open outer end with a closed inner one ("over 200: one half") gives one half beyond the inner end.
template <class M>
constexpr PerMille mark_in(const Band<M>& band, M measured) {
    const auto gap = [](M a, M b) { return std::int64_t{a.count} - b.count; };
    if (measured < band.half.low || measured > band.half.high) return no_mark;
    if (measured < band.full.low) return share_of(gap(measured, band.half.low), gap(band.full.low, band.half.low));
    if (measured > band.full.high) {
        if (band.half.high.count == open_end) return half_mark;
        return share_of(gap(band.half.high, measured), gap(band.half.high, band.full.high));
    }
    return full_mark;
}

// "At least": full from `full_from`, falling to 0 at `half_from`.
template <class M>
constexpr PerMille mark_from(M full_from, M half_from, M measured) {
    return mark_in(Band<M>{{full_from, {open_end}}, {half_from, {open_end}}}, measured);
}

// "At most": full to `full_to`, falling to 0 at `half_to`.
template <class M>
constexpr PerMille mark_to(M full_to, M half_to, M measured) {
    constexpr M least{std::numeric_limits<std::int32_t>::min()};
    return mark_in(Band<M>{{least, full_to}, {least, half_to}}, measured);
}

constexpr PerMille smaller(PerMille a, PerMille b) { return std::min(a, b); }

}  // namespace spurwright::rules
