// Wood written onto a grown vine by given measures instead of draws of growth, and wood taken off as if it had never
// grown. Inner to sim/growth: tempt.h. Must not know: why it is wanted.
#pragma once

#include <optional>
#include <vector>

#include "sim/vine/vine.h"

namespace spurwright::growth {

struct AddedWood {
    NodeId on;
    Side side{};
    int born = 1;
    double diameter_mm = 9, axis_ratio = 1.1, joint_mm = 66;
    CaneClass grew{};
    bool from_old_wood = false; // its base leaves sideways; else as a bud of a cane's node leaves
    double azimuth_deg = 15;    // off the row, to the front or the back by a draw
    std::optional<bool> towards_front; // in place of the draw
    double elbow_deg = 45, lean_deg = 72;
    int most_joints = 200; // cut there a winter after it grew; else it ends at the hedge, ripe to there
};

// Adds it under the next free name and returns that. Posture, tendrils and bunch stems as of any shoot; no harm. One-year
// wood gets its winter buds, older wood latent buds at its crown. The bearing node is widened where it would be thinner.
AxisId add_wood(Vine& vine, const AddedWood& wood);

// Last summer's wood of a neighbour, with its base at `foot` on that one's wood, leaning over to this vine and gripped
// there: an axis on nothing.
struct OverhangingWood {
    Side side{}; // from where
    Place foot;
    double diameter_mm = 9, joint_mm = 66, elbow_deg = 30, lean_deg = 45;
};
AxisId add_overhanging(Vine& vine, const OverhangingWood& wood);

// Two or more points, from the bearing node outward; an axis of old wood, thinner from its foot to its top, cut off past
// its last node.
AxisId add_finger(Vine& vine, NodeId on, Side side, int born, const std::vector<Place>& places, Length foot, Length top);

// Takes these axes and all they bear off the tables, with their wounds, ties and layings.
void take_off(Vine& vine, const std::vector<AxisId>& axes);

} // namespace spurwright::growth
