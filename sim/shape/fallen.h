// The wood that a shape has and a later one lacks, piece by piece, each as it stood: what a cut lets fall. Plain doubles in
// metres. Must not know: plans, cuts, triangles.
#pragma once

#include <vector>

#include "sim/shape/vine_shape.h"

namespace spurwright::shape {

// One piece in one body: the stem it was cut at, from the cut outward, and all it bears.
struct FallenPiece {
    VineShape shape;  // stems, buds, hangers and wounds of this piece alone, where they stood
    NodeId foot;      // the innermost node of it: where this stands again, the piece is no longer fallen
    Vec3 cut;         // middle of the face where it came off
    Vec3 balance;     // its balance point, by volume of wood
};

// In the order of the stems. A cut that took no node lets nothing fall.
std::vector<FallenPiece> fallen_pieces(const VineShape& before, const VineShape& after);

// Whether this piece's wood stands there again.
bool stands_again(const FallenPiece& piece, const VineShape& now);

} // namespace spurwright::shape
