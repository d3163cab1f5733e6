// How far a mark may be off because people see, and do not calculate: the best plan judged again with its measures as an
// eye at arm's length might read them. The tolerance of "as good" is never finer than that.
#pragma once

#include <span>

#include "sim/planning/planning.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::planning {

inline constexpr int eye_draws = 64;                // our choice
inline constexpr PerMille eye_percentile{900};      // of the change, our choice
inline constexpr int measured_finer = 2;            // a piece that was measured is read so many times finer: our choice

// The 90th percentile of the change of points over 64 readings, each measure off by at most what the house says people
// see (house.acceptable.see_*), evenly drawn by the vine's seed. Read anew are the measures by which wood is chosen; the
// cuts a hand makes itself lie under its eyes and are taken as made (our choice). On pieces in `measured` calliper and
// ruler were used: half of it. `best` is a plan of this vine, which is uncut this winter.
Tenths eye_noise(const Vine& vine, const rules::HouseRules& house, const Plan& best,
                 std::span<const AxisId> measured = {});

// Points under the best that are still as good: what the house allows, or the noise where that is more.
Tenths tolerance(const Vine& vine, const rules::HouseRules& house, const Plan& best,
                 std::span<const AxisId> measured = {});

}  // namespace spurwright::planning
