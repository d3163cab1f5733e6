// Random numbers addressed by what they are for, not by how many came before. draw(seed, trait, part, nth) depends
// on those four alone, so adding a trait or a cane never disturbs the rest of a vine. Integer arithmetic only: the
// same on every machine. No state, no <random>: its distributions differ between libraries.
#pragma once

#include <cstdint>

namespace spurwright {

// SplitMix64's output function (our choice of mixer; golden values in the tests).
constexpr std::uint64_t mix(std::uint64_t z) {
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

// `trait` is the number of an append-only enum of the caller; `part` names what the draw is for (an axis or node id).
constexpr std::uint64_t draw(std::uint64_t seed, std::uint32_t trait, std::uint32_t part, std::uint32_t nth = 0) {
    constexpr std::uint64_t golden = 0x9e3779b97f4a7c15u;
    std::uint64_t h = mix(seed + golden);
    h = mix(h ^ (std::uint64_t{part} << 32 | trait));
    return mix(h + golden * (std::uint64_t{nth} + 1));
}

// Whole number in [low, high], evenly spread. Needs low <= high.
constexpr std::int32_t between(std::uint64_t bits, std::int32_t low, std::int32_t high) {
    const auto span = static_cast<std::uint64_t>(std::int64_t{high} - low + 1);
    return static_cast<std::int32_t>(low + static_cast<std::int64_t>(((bits >> 32) * span) >> 32));
}

// In (0, 1), never an end: 53 bits and a half step.
constexpr double unit(std::uint64_t bits) { return (static_cast<double>(bits >> 11) + 0.5) * 0x1.0p-53; }

constexpr double uniform(std::uint64_t bits, double low, double high) { return low + (high - low) * unit(bits); }
constexpr bool chance(std::uint64_t bits, double probability) { return unit(bits) < probability; }

// Standard normal, by the quantile of unit(bits).
double normal(std::uint64_t bits);

}  // namespace spurwright
