// What lies in the row after a vine was pruned, piece by piece as a hand takes them up: canes, the cut-off ends of the
// canes that stay, laterals, suckers, old wood with the canes still on it. Masses are those of the engine's prunings, so
// that what belongs in the bundle adds up to what the rule of the weighed prunings measures. Must not know: the scale,
// sentences, screens.
#pragma once

#include <optional>
#include <vector>

#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"

namespace spurwright::weighing {

enum class Kind : unsigned char { cane, end, lateral, bits, sucker, old_wood };
constexpr auto words_of(Kind) { return std::to_array<std::string_view>({"cane", "end", "lateral", "bits", "sucker", "old-wood"}); }

enum class Lies : unsigned char { heap, wires, bundle };  // the ends of laid canes hang in the wires
constexpr auto words_of(Lies) { return std::to_array<std::string_view>({"heap", "wires", "bundle"}); }

struct Piece {
    Kind kind{};
    AxisId axis;                     // of bits the first
    Mass mass;                       // with the laterals that are still on it
    Length length, thick, thin;      // of the piece, at its inner and its outer end
    int joints = 0, laterals = 0;    // on it
    bool belongs = false;            // in the bundle, as the house counts it
    bool dead = false;
    Lies found = Lies::heap;
    std::optional<std::size_t> on;   // the piece of old wood it still stands on
};

// Pieces lighter than this are swept up as one handful (our choice).
inline constexpr Mass a_bit{3'000};

// In the order of the vine's wood. `after` is `before` pruned.
std::vector<Piece> pieces_of(const Vine& before, const Vine& after, const rules::HouseRules& house);

// What a cut-off vine's bundle has by volume and density, and between what it lies as fresh wood weighs 0.85 to
// 1.05 g/cm3 (our choice; the pieces' own masses are at 0.95).
struct TrueBundle {
    Mass mass, least, most;
};
TrueBundle true_bundle(const std::vector<Piece>& pieces);

}  // namespace spurwright::weighing
