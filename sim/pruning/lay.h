// Laying a cane along the fruiting wire: its course, how hard it is strained and whether it holds. The rod of
// sim/bending from its base, held as it grew, to the tie where it comes level onto the wire. The tie is the one where the
// strain is least, unless the plan ties nearer: then the cane comes down there. Solved for the whole cane as it stands,
// whatever its cut end, so that the answer depends on the cane, the side and the tie alone (DEVELOPERS.md, decision 5).
#pragma once

#include <optional>

#include "sim/vine/course_book.h"
#include "sim/vine/vine.h"

namespace spurwright {

// Share of strain at which a dormant cane breaks through in mild weather, and where its skin cracks and where it creaks.
// Our choice, from the hand rule of a bend of 12-15 diameters (memory).
inline constexpr Strain strain_at_break{40'000};
inline constexpr int skin_crack_per_mille = 900;
inline constexpr int warning_per_mille = 600;

// Nearer its base than this no tie brings a cane down: a string holds it where it lies. Our choice.
inline constexpr Length least_pulled{300'000};

// Whether a tight tie at this node brings the cane down nearer than it would come by itself (`least`): from 300 mm of wood
// on, where it passes over the wire, no higher than a tie reaches.
bool pulls(const Vine& vine, const Axis& axis, const Course& least, std::uint32_t tied);

// `tied` is the node of the nearest tight tie; one that does not pull changes nothing.
Course course_of(const Vine& vine, const Axis& axis, Side side, std::optional<std::uint32_t> tied = std::nullopt);
bool would_break(const Vine& vine, const Axis& axis, Side side);

// The node of the nearest tight tie of this winter on the axis: it pulls the cane down.
std::optional<std::uint32_t> nearest_tight_tie(const Vine& vine, AxisId axis);

}  // namespace spurwright
