// Which buds push in spring, and which of their shoots are left after thinning (steps G3 to G5 and S1).
#pragma once

#include <vector>

#include "sim/growth/next_vine.h"
#include "sim/growth/season.h"
#include "sim/growth/traits.h"

namespace spurwright::growth {

enum class PushKind : unsigned char { count, twin, base, head, sucker };

// One shoot that is left to grow.
struct Push {
    NodeId on;               // the node that bears it
    std::uint32_t nth = 0;   // among the pushes of that node: 0 count bud, 1 its secondary, then base and latent buds
    PushKind kind{};
    Side side{};
    double along_cane = -1;  // 0 at the basal count node of a cane to 1 at its end; below 0: spur or head
    int count_index = 0;     // 1 at the basal count node
    bool laid = false;       // on a cane laid in the winter before
    double azimuth_deg = 0;  // of its base, from the row direction of its side
    bool towards_front = false;  // across the row: +z
    double parent_area = 0;  // mm2, section of the cane that bore the bud
};

struct Spring {
    std::vector<Push> pushes;  // by node, then nth
    double shoots = 0;         // S
};

// `next` is carry_over(pruned), whose latent buds may push as well. Needs capacity > 0.
Spring budburst(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings, const Draws& draws, SeasonNotes& notes);

}  // namespace spurwright::growth
