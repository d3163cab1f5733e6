// Small helpers for the part of a rule that says what it found: numbers in thousandths of their unit, bands with open
// ends, sides as text keys. No sentences.
#pragma once

#include "sim/rules/band.h"
#include "sim/rules/facts.h"
#include "sim/rules/findings.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// "towards the near post", "towards the far post": people never read left or right.
constexpr TextKey side_key(Side side) {
    return TextKey{side == Side::right ? "side.right" : side == Side::left ? "side.left" : "side.either"};
}

template <class M>
std::optional<std::int64_t> end_of(M m, std::int64_t thousandths = 1) {
    const bool open = m.count == open_end || m.count == std::numeric_limits<std::int32_t>::min();
    return open ? std::nullopt : std::optional<std::int64_t>(m.count * thousandths);
}

template <class M>
Wanted wanted(const Range<M>& range, std::int64_t thousandths = 1) {
    return {end_of(range.low, thousandths), end_of(range.high, thousandths)};
}

// A measure already in thousandths of its unit (um of mm, millidegrees of degrees, per mille of a ratio), and its band.
template <class M>
Said measured_in(Unit unit, M measured, const Range<M>& full, const Range<M>& half, std::string_view key,
                 Arguments arguments) {
    Said said;
    said.measured = measured.count;
    said.unit = unit;
    said.full = wanted(full);
    said.half = wanted(half);
    said.key = TextKey{key};
    said.arguments = std::move(arguments);
    return said;
}

template <class M>
Range<M> at_least(M m) {
    return {m, {open_end}};
}
template <class M>
Range<M> at_most(M m) {
    return {{std::numeric_limits<std::int32_t>::min()}, m};
}

constexpr double no_number = std::numeric_limits<double>::infinity();
// A claim without a number: what the work says in words, both ends open.
constexpr Claim says(const Source& source, std::string_view place) {
    return {&source, place, -no_number, no_number, ""};
}

}  // namespace spurwright::rules
