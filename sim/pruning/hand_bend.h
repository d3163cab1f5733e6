// A cane while a hand bends it down to the wire, before it is laid: how it stands and how near it is to breaking. What a
// window shows as a person pulls; nothing of it is kept. The rod of sim/bending, in well under a millisecond.
#pragma once

#include <vector>

#include "sim/vine/vine.h"

namespace spurwright {

// By share of the strain at break (lay.h): quiet below 0.6, creaks below 0.9, its skin cracks up to 1, else it breaks. Our
// choice.
enum class BendLevel : unsigned char { quiet, creak, skin, breaks };

BendLevel level_of(Strain strain);

struct HandBend {
    std::vector<Place> places;  // of every node of the axis, crown first
    Strain strain;              // the largest
    NodeId worst;               // node of it
    BendLevel level{};
};

// The axis as it was found this winter, in the hand at this node (1 to the last; others count as the nearest of these) and
// pulled down by a share of its way to the wire on that side: 0 as it stands, 1 at the wire, clamped. A node that stands
// no higher than the wire stays there. Needs an axis of two nodes or more.
HandBend hand_bend(const Vine& uncut, const Axis& axis, Side side, std::uint32_t node, PerMille pulled);

}  // namespace spurwright
