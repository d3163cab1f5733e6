// Laying a cane along the fruiting wire: its course, how hard it is strained and whether it holds. Solved for the
// whole cane as it stands, whatever its cut end, so that the answer depends on the cane and the side alone.
// The form is bending/base_arc.h; the rod solver will fill the same function.
#pragma once

#include <vector>

#include "sim/vine/vine.h"

namespace spurwright {

// Share of strain at which a dormant cane breaks through in mild weather, and where its skin cracks. Our choice, from
// the hand rule of a bend of 12-15 diameters (memory); DEVELOPERS.md, decision 5.
inline constexpr Strain strain_at_break{40'000};
inline constexpr int skin_crack_per_mille = 900;
inline constexpr int warning_per_mille = 600;

struct Course {
    std::vector<Place> places;  // of every node of the axis, crown first, as if none were removed
    Strain strain;              // the largest
    NodeId worst;               // node of it
    LaidState state{};
};

Course course_of(const Vine& vine, const Axis& axis, Side side);
bool would_break(const Vine& vine, const Axis& axis, Side side);

}  // namespace spurwright
