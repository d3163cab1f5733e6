// Two choices of one vine grown on through the winters: the near cane, then pruned by a good pruner, beside the far
// cane, then pruned by one who takes far canes; same weather, same draws. Really grown, never drawn up. Pure.
// Must not know: screens, sentences.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sim/planning/planning.h"

namespace spurwright::practice {

struct GrowOnWish {
    int winters = 0;   // after this one; 0: nothing to grow on
    AxisId near, far;  // the two canes
};

// Along the wood from the crown point to where the laid cane of each side starts, left and right; none: no cane laid.
using Starts = std::array<std::optional<Length>, 2>;

struct GrownOn {
    struct Winter {
        int winter = 0;  // since planting
        Starts near, far;
    };
    Side side{};                          // that the two canes stand on
    std::vector<Winter> winters;          // this winter first
    bool own_near = false, own_far = false;  // that life begins with the vine as it was pruned by hand
};

// `start` is uncut, `own` the same vine as pruned. A life begins with `own` where it laid that cane to its own side,
// else with the best plan that does. `planning` is of `start`.
GrownOn grow_on(const Vine& start, const Vine& own, const planning::Planning& planning, const GrowOnWish& wish);

}  // namespace spurwright::practice
