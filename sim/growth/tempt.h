// Temptations of a scene: one axis of a grown vine changed or added (and what must carry it), in structure, measures and
// posture alike, so that every measure of the rules and the picture read the same true wood. The vine then has no vine
// code. Numbers are given by whoever sets the scene; same vine, same numbers, same result. Must not know: rules, scenes,
// files.
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

// A sound cane at the crown point that leaves the head across the row.
struct AlleyCane {
    static constexpr std::string_view name = "alley-cane";
    Side side = Side::left;
    Length diameter{9'200};
    Length joint{66'000};
    Angle azimuth{80'000}; // 70 to 90 degrees
};

// A thick, flat, long-jointed cane where last winter's laid cane comes to the wire, at the top of its bend.
struct BendBull {
    static constexpr std::string_view name = "bend-bull";
    Side side = Side::left;
    Length diameter{13'600};
    PerMille axis_ratio{1'330};
    Length joint{132'000};
};

// A straight sound cane from the trunk, above the graft union, at the node nearest to `height`.
struct TrunkSucker {
    static constexpr std::string_view name = "trunk-sucker";
    Side side = Side::left;
    Length diameter{8'800};
    Length joint{62'000};
    Length height{350'000}; // above the soil
};

// The same from below the graft union: wood of the rootstock.
struct RootstockSucker {
    static constexpr std::string_view name = "rootstock-sucker";
    Side side = Side::left;
    Length diameter{8'200};
    Length joint{70'000};
    Length height{50'000};
};

// A neighbour's cane that came over and hangs in this vine's wires by its tendrils: an axis of its own on nothing of
// this vine, with its base on the neighbour's wood. It belongs to the neighbour: it can be neither laid nor kept here.
struct NeighbourCane {
    static constexpr std::string_view name = "neighbour-cane";
    Side side = Side::left; // from where
    Length diameter{9'000};
    Length joint{68'000};
};

// A lateral of pencil thickness on the thickest cane of the side: last summer's wood on last summer's wood.
struct LateralLikeCane {
    static constexpr std::string_view name = "lateral-like-cane";
    Side side = Side::left;
    Length diameter{8'000};
    Length joint{60'000};
};

// A pale, flat, long-jointed cane at the crown point, grown in the shade of the head.
struct ShadedCane {
    static constexpr std::string_view name = "shaded-cane";
    Side side = Side::left;
    Length diameter{7'000};
    PerMille axis_ratio{1'190};
    Length joint{104'000};
};

// Each of the next six is a good cane near the head with one fault, at the node nearest to `out` of last winter's spur
// or of the base of last winter's laid cane.

// Cracked at its base.
struct CrackedBase {
    static constexpr std::string_view name = "cracked-base";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{9'400};
    Length joint{66'000};
};

// One of two canes from one node, split low. The other is a little thinner.
struct DoubleCane {
    static constexpr std::string_view name = "double-cane";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{9'400};
    Length joint{66'000};
};

// Brown for the first part of its length only; the buds beyond are dead.
struct ShortRipeCane {
    static constexpr std::string_view name = "short-ripe-cane";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{9'400};
    Length joint{66'000};
    Length ripe{300'000}; // 200 to 400 mm
};

// A wound of hail or wire where a pair of catch wires rubbed it, inside the part that would be kept.
struct WireScar {
    static constexpr std::string_view name = "wire-scar";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{9'400};
    Length joint{66'000};
};

// Spotted by disease along its lower joints.
struct SpottedCane {
    static constexpr std::string_view name = "spotted-cane";
    Side side = Side::left;
    Length out{70'000};
    Length diameter{9'400};
    Length joint{66'000};
};

// A side with one low near cane, one further cane, and nothing else thicker than `others`: whoever lays the near one has
// no place for a spur.
struct SingleSpurPlace {
    static constexpr std::string_view name = "single-spur-place";
    Side side = Side::left;
    Length out{35'000}; // of the near cane, on the trunk below the crown point
    Length diameter{8'400};
    Length further_out{95'000};
    Length further_diameter{9'000};
    Length joint{68'000}; // of both
    Length others{4'400}; // as thick as the side's other canes are at most
};

// A head that has climbed to the wire: both crown points close below it, sawn scars and a dead arm's stub on its upper
// side. Nothing that lay on the wire moves; what passes the hedge is cut.
struct ClimbedHead {
    static constexpr std::string_view name = "climbed-head";
    Side side = Side::left;      // of the dead stub
    Length below_wire{25'000};   // of the crown points' middle, 10 to 30 mm
    Length stub{36'000};         // thickness of the dead stub
};

using Temptation =
    std::variant<FatTopCane, FarCane, PlainNearCane, OldUpright, AlleyCane, BendBull, TrunkSucker, RootstockSucker,
                 NeighbourCane, LateralLikeCane, ShadedCane, CrackedBase, DoubleCane, ShortRipeCane, WireScar,
                 SpottedCane, SingleSpurPlace, ClimbedHead>;

struct Tempted {
    Vine vine;   // recipe 255: no code grows it
    AxisId axis; // what tempts
};

// The vine, uncut, with the temptation on it. Fault::not_allowed, "error.tempt.no-place" with `text` (the switch) where
// the vine offers no place for it; "error.tempt.range" where a number lies outside what the model can stand.
[[nodiscard]] Result<Tempted> tempted(const Vine& vine, const Temptation& temptation);

} // namespace spurwright::growth
