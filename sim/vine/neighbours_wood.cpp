#include "sim/vine/neighbours_wood.h"

namespace spurwright {

bool is_neighbours(const Vine& vine, const Axis& axis) {
    if (axis.parent || axis.born != vine.winter) return false;
    for (const NodeId own : {vine.head, vine.crown_left, vine.crown_right})
        if (axis_of(own) == axis.id) return false;
    return true;
}

} // namespace spurwright
