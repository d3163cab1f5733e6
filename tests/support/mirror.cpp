#include "tests/support/mirror.h"

#include <utility>

namespace spurwright::test {
namespace {

Role mirrored(Role role) { return role == Role::left ? Role::right : role == Role::right ? Role::left : role; }

}  // namespace

Vine mirrored(Vine vine) {
    std::swap(vine.crown_left, vine.crown_right);
    std::swap(vine.origin_left, vine.origin_right);
    std::swap(vine.neighbours[0], vine.neighbours[1]);
    for (Axis& axis : vine.axes) {
        axis.side = other(axis.side);
        axis.mark = mirrored(axis.mark);
    }
    for (Node& node : vine.nodes) node.place.x = -node.place.x;
    for (Laid& laid : vine.laid) laid.side = other(laid.side);
    return vine;
}

Plan mirrored(Plan plan) {
    for (Edit& edit : plan.edits) {
        if (auto* lay = std::get_if<Lay>(&edit)) lay->side = other(lay->side);
        if (auto* mark = std::get_if<Mark>(&edit)) mark->role = mirrored(mark->role);
    }
    return plan;
}

}  // namespace spurwright::test
