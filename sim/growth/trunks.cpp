#include "sim/growth/trunks.h"

namespace spurwright::growth {

bool serves(const Vine& vine, const Axis& trunk, Side side) {
    return axis_of(vine.crown(side)) == trunk.id || axis_of(vine.crown(other(side))) != trunk.id;
}

NodeId fork_of(const Vine& vine) {
    const Axis* first = vine.find(first_trunk);
    const Axis* second = vine.find(second_trunk);
    if (!first || !second || first->parent || second->parent) return {};
    const Place& at = vine.nodes_of(*second)[0].place;
    NodeId nearest;
    double least = 0;
    for (const Node& node : vine.nodes_of(*first)) {
        const double x = node.place.x.count - at.x.count, y = node.place.y.count - at.y.count,
                     z = node.place.z.count - at.z.count;
        const double apart = x * x + y * y + z * z;
        if (nearest && apart >= least) continue;
        nearest = node.id;
        least = apart;
    }
    return nearest;
}

} // namespace spurwright::growth
