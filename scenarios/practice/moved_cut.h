// What if one end cut had been made elsewhere: each piece kept, where else it could end, what the vine would then score
// and what it would then say. The own acts stay as they are. Must not know: sentences, pictures.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/twin.h"
#include "sim/planning/what_if.h"

namespace spurwright::practice {

// A cane laid or a spur kept whose end this winter's own acts decided.
struct KeptPiece {
    AxisId axis;
    Side side{};
    bool spur = false;
    NodeId end;  // the node it is cut after
    bool operator==(const KeptPiece&) const = default;
};

// A sentence that reads otherwise than it did.
struct SaidAnew {
    Tenths lost_before, lost;
    TextKey key;  // what is said now
    Arguments arguments;
};

struct MovedCut {
    struct End {
        NodeId last;
        int buds = 0;    // count buds that it keeps
        Tenths points, before_caps;
    };
    std::vector<KeptPiece> pieces;
    std::size_t piece = 0;     // spoken of
    std::vector<End> ends;     // of it, the shortest first; its own is among them
    std::size_t mine = 0, at = 0;
    std::vector<SaidAnew> says;  // with the cut at `at`, what changed most first; empty at the own end
    Twin line;                   // the piece as it would then lie
    const KeptPiece& of() const { return pieces[piece]; }
    const End& end() const { return ends[at]; }
    Tenths gained() const { return gained_at(at); }
    // What it is worth more than the own end; where a cap holds both alike, before caps.
    Tenths gained_at(std::size_t end) const;
    std::size_t best() const;  // the end that is worth most; its own where none is worth more
};

// A pruned vine with its judgement. `begun`: so many edits were made before and are nobody's to move.
struct PrunedWork {
    const Vine& before;
    const rules::HouseRules& house;
    const Plan& plan;
    const rules::Judgement& mine;
    std::size_t begun = 0;
};

// Canes near and far, then spurs near and far, outward; only those that could end elsewhere.
std::vector<KeptPiece> kept_pieces(const PrunedWork& work);

// With the piece whose axis this is, else the first; its cut still where it is. Nothing where no cut can be moved.
std::optional<MovedCut> take_cut(const PrunedWork& work, AxisId axis);
// To one of its ends.
void move_cut(MovedCut& cut, const PrunedWork& work, std::size_t at);

}  // namespace spurwright::practice
