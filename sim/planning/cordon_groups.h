// The plans of a cordon that are as good, by the canes they keep as spurs: the best sets of canes first, each with the
// number of its plans. There are too many sets to count; how many plans there are in all is exact (tally).
#pragma once

#include "sim/planning/cordon.h"

namespace spurwright::planning {

struct CordonGroup {
    CordonPick best;          // its best plan, of several the lowest
    std::uint64_t count = 0;  // its plans with at least so many points
    int low = 0, high = 0;    // of their points
    bool holds(const CordonPick& pick) const;  // the same canes
    bool operator==(const CordonGroup&) const = default;
};

// At most `most` of them, exact and in order: by their best plan, as ranks_above() has it. `groups` may end early where
// there are no more.
std::vector<CordonGroup> cordon_groups(const CordonTables& tables, int points, std::size_t most);

}  // namespace spurwright::planning
