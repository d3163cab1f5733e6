#include "scenarios/practice/walked_pieces.h"

#include <algorithm>
#include <tuple>

#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

// Of the side shoots only those on wood that a tape keeps: the others go with theirs.
bool is_walked(const Vine& vine, const Axis& axis) {
    if (axis.removed || is_trunk(axis)) return false;
    if (!is_lateral(vine, axis)) return true;
    const Role kept = vine.find(axis_of(axis.parent))->mark;
    return kept != Role::none && kept != Role::remove;
}

std::vector<AxisId> standing_in_row(const Vine& vine) {
    struct Standing {
        AxisId axis;
        Place base;
    };
    std::vector<Standing> standing;
    for (const Axis& axis : vine.axes)
        if (is_walked(vine, axis)) standing.push_back({axis.id, vine.nodes_of(axis)[0].place});
    std::stable_sort(standing.begin(), standing.end(), [](const Standing& a, const Standing& b) { return std::tie(a.base.x, a.base.y) < std::tie(b.base.x, b.base.y); });
    std::vector<AxisId> canes;
    canes.reserve(standing.size());
    for (const Standing& s : standing) canes.push_back(s.axis);
    return canes;
}

}  // namespace

NodeId bears_kept(const Vine& now, AxisId piece) {
    NodeId outermost;
    for (const Axis& axis : now.axes) {
        if (axis.removed || (axis.mark != Role::left && axis.mark != Role::right && axis.mark != Role::spur)) continue;
        for (const Axis* at = &axis; at && at->parent; at = now.find(axis_of(at->parent)))
            if (axis_of(at->parent) == piece && (!outermost || index_of(at->parent) > index_of(outermost))) outermost = at->parent;
    }
    return outermost;
}

std::vector<AxisId> walked_pieces(const Vine& now, std::vector<AxisId> left_to_do) {
    const std::vector<AxisId> row = standing_in_row(now);
    const auto at = [](const std::vector<AxisId>& list, AxisId id) { return std::find(list.begin(), list.end(), id); };
    std::stable_sort(left_to_do.begin(), left_to_do.end(), [&](AxisId a, AxisId b) { return at(row, a) < at(row, b); });
    std::vector<AxisId> all = left_to_do;
    for (const AxisId id : row)
        if (at(left_to_do, id) == left_to_do.end()) all.push_back(id);
    return all;
}

}  // namespace spurwright::practice
