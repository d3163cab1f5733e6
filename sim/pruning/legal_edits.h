// What may be done to a vine now, as ranges. The same questions prune() asks, so that a window, a random tester and
// the plan reader agree. Unwise edits are legal and judged: two-year wood may be laid, the trunk may be cut.
#pragma once

#include <vector>

#include "sim/pruning/plan.h"

namespace spurwright {

struct CutRange {
    NodeId past;
    Length lowest, highest;  // of `beyond`; lowest is below 0 on node 0 only, down to minus its collar
};
struct LegalEdits {
    std::vector<CutRange> cuts;
    std::vector<AxisId> lays;   // to either side
    std::vector<NodeId> ties;   // nodes within reach of a wire
    std::vector<AxisId> marks;  // every axis
};
LegalEdits legal_edits(const Vine& vine);

inline constexpr Length tie_reach{60'000};  // a tie's node lies no farther from a wire than this (our choice)

// Whether a tie can be made at this place. A cane laid this winter that arches over the fruiting wire is pulled down
// onto it as it is tied: it may lie any height above it, never farther below or aside than tie_reach.
bool can_be_tied(const Vine& vine, const Place& place, bool laid_now);

// Why this edit may not be made now, or nothing. Faults: unknown_part, already_gone, not_allowed.
std::optional<Error> why_not(const Vine& vine, const Edit& edit);

// The wood beyond a node that a cut may still be made in: the next joint, or at the last node the ripe wood beyond it.
Length wood_beyond(const Vine& vine, const Axis& axis, std::uint32_t index);

}  // namespace spurwright
