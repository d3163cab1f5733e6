// Temptations of a scene: one axis of a grown vine changed or added, in structure, measures and posture alike, so that
// every measure of the rules and the picture read the same true wood. The vine then has no vine code. Numbers are given
// by whoever sets the scene; same vine, same numbers, same result. Must not know: rules, scenes, files.
#pragma once

#include <array>
#include <string_view>
#include <variant>

#include "sim/core/error.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

// Diameters are means over joints 2 and 3, joints means over the first twelve count buds, distances along the wood to
// the crown point of the side: as everyone measures them (vine_query.h). Defaults: our choice.

// A thick, flat, long-jointed cane above the wire, on a finger of old wood: a tidy head stands below the wire.
struct FatTopCane {
    static constexpr std::string_view name = "fat-top-cane";
    Side side = Side::left;
    Length diameter{13'400};
    PerMille axis_ratio{1'300}; // major / minor
    Length joint{138'000};
    Length above_wire{40'000}; // of its base
};

// A faultless cane out along last winter's laid cane, at the node nearest to `out`; out lies within 250 to 400 mm.
struct FarCane {
    static constexpr std::string_view name = "far-cane";
    Side side = Side::left;
    Length out{280'000};
    Length diameter{10'000};
    Length joint{66'000};
};

// An ordinary sound cane, ripe to the end, on last winter's spur, above another cane of the same spur; at the node
// nearest to `out`.
struct PlainNearCane {
    static constexpr std::string_view name = "plain-near-cane";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{7'800};
    Length joint{64'000};
};

// Last winter's spare cane left standing: upright two-year wood at the head, with three canes on it.
struct OldUpright {
    static constexpr std::string_view name = "old-upright";
    Side side = Side::left;
    Length diameter{13'000};
    Angle off_vertical{25'000};
};

using Temptation = std::variant<FatTopCane, FarCane, PlainNearCane, OldUpright>;

struct Tempted {
    Vine vine;   // recipe 255: no code grows it
    AxisId axis; // what tempts
};

// The vine, uncut, with the temptation on it. Fault::not_allowed, "error.tempt.no-place" with `text` (the switch) where
// the vine offers no place for it; "error.tempt.range" where a number lies outside what the model can stand.
[[nodiscard]] Result<Tempted> tempted(const Vine& vine, const Temptation& temptation);

} // namespace spurwright::growth
