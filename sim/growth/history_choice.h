// The history pruner's choice: on each side the pair of cane and spur with the lowest cost, in whole numbers. Frozen:
// every number here belongs to the generator version of the vine code.
#pragma once

#include <optional>
#include <vector>

#include "sim/growth/history_pruner.h"

namespace spurwright::growth {

struct Chosen {
    const Axis* cane = nullptr; // null: none
    const Axis* spur = nullptr;
};

// What is measured of a one-year cane for the choice.
struct Candidate {
    const Axis* axis = nullptr;
    int distance_mm = 0, azimuth_deg = 0, below_wire_mm = 0, ripe_buds = 0;
    double thickness_mm = 0, joint_mm = 0;
    bool flagged = false, poorly_placed = false; // poorly placed: on rootstock or low on the trunk
    int whim = 0;
};

// All canes of that side but those on rootstock, by id.
std::vector<Candidate> candidates_of(const Vine& vine, Side side);

// Nothing where the cane is refused: fewer than 4 ripe count buds, or dearer than 700. choose() refuses one that would
// break, too: it asks last, since bending is dear.
std::optional<int> cane_cost(const Candidate& c, const PrunerHabits& habits, std::optional<Length> last_origin);

int spur_cost(const Candidate& c, const Candidate* cane);
inline constexpr int no_spur_cost = 400;

// The cheapest spur of a side that lays no cane; null where none has a bud or all are dearer than none.
const Axis* best_spur(const Vine& vine, Side side);

Chosen choose(const Vine& vine, Side side, const PrunerHabits& habits);

} // namespace spurwright::growth
