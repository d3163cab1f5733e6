// Facts of one piece, measured on the uncut vine: the search asks for every candidate, the judge for the pieces that
// were kept. What a plan did to a piece (its end, its ties) is handed in; the canonical forms stand here too.
#pragma once

#include "sim/pruning/lay.h"
#include "sim/pruning/plan.h"
#include "sim/rules/facts.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// The end a careful hand gives a piece kept out to this node: 20 mm past it; in a joint under 25 mm, 5 mm short of the
// next node; under 15 mm, through it. At the last node the joint is the ripe wood beyond it: 10 mm or less are left
// uncut. Lengths are whole tenths of a millimetre, rounded down.
PieceEnd canonical_end(const Vine& uncut, const Axis& axis, std::uint32_t last_node);

// The tie such a hand makes on a cane kept out to this node: tight, at the last node but one, else at the last, else one
// farther in, 15 mm past it, in a joint under 30 mm in its middle, but clear of the bud. Nothing where the laid cane does
// not come near the wire there, or would break if it were pulled down so near its base.
std::optional<Fasten> canonical_tie(const Vine& uncut, const HouseRules& house, const Axis& axis, const Course& course,
                                    std::uint32_t last_node);

// What the wood itself tells, however it is laid or tied: all but reach, free wire and tying. Needs a one-year axis.
CaneFacts measure_wood(const Vine& uncut, const HouseRules& house, const Axis& axis, const PieceEnd& end);

// `course` is course_of(uncut, axis, side, nearest tight tie); of `tying` the ties and wraps are read, strain and sag come
// of the course.
CaneFacts measure_cane(const Vine& uncut, const HouseRules& house, const Axis& axis, Side side, const Course& course,
                       const PieceEnd& end, const TyingFacts& tying);
// In canonical form: canonical_end(), one turn round the wire, canonical_tie(), pulled down there where that tie pulls.
// `course` is course_of(uncut, axis, side).
CaneFacts measure_cane(const Vine& uncut, const HouseRules& house, const Axis& axis, Side side, const Course& course,
                       std::uint32_t last_node);

SpurFacts measure_spur(const Vine& uncut, const HouseRules& house, const Axis& axis, const PieceEnd& end);
// Cut canonically after its n-th count bud. Needs an axis with that many ripe count buds.
SpurFacts measure_spur(const Vine& uncut, const HouseRules& house, const Axis& axis, int buds);

SpurPlaceFacts place_of(const SpurFacts& spur, const CaneFacts* cane_of_its_side);

// Of the end of a cane laid along this course: along the row from the trunk, positive towards `side`.
Length reach_of(const Course& course, const Vine& uncut, const Axis& axis, Side side, const PieceEnd& end);
// How far a cane's own space runs from the trunk, where no neighbour stands on that side; none where one does.
std::optional<Length> room_of(const Vine& uncut, const HouseRules& house, Side side);
Length free_wire_of(const Vine& uncut, const HouseRules& house, Side side, Length reach);

}  // namespace spurwright::rules
