#include "sim/rules/clearing.h"

#include <algorithm>

#include "sim/pruning/legal_edits.h"
#include "sim/rules/cordon_row.h"

namespace spurwright::rules {
namespace {

constexpr std::uint32_t bears_none = 0xffff'ffff;

std::size_t row_of_id(const Vine& vine, AxisId id) { return row_of(vine, *vine.find(id)); }

// Of each axis row: its outermost node that bears a kept piece, or bears_none.
std::vector<std::uint32_t> outermost_bearing(const Vine& vine, std::span<const AxisId> kept) {
    std::vector<std::uint32_t> outermost(vine.axes.size(), bears_none);
    for (const AxisId piece : kept) {
        for (const Axis* axis = vine.find(piece); axis->parent; axis = vine.find(axis_of(axis->parent))) {
            std::uint32_t& node = outermost[row_of_id(vine, axis_of(axis->parent))];
            const std::uint32_t here = index_of(axis->parent);
            if (node == bears_none || node < here) node = here;
        }
    }
    return outermost;
}

Length tenths_below(Length l) { return {(l.count >= 0 ? l.count : l.count - 99) / 100 * 100}; }

Length times_one_and_a_half(Length diameter) { return {diameter.count * 3 / 2}; }

// A stub on an axis that keeps its nodes out to `last`.
DueCut past_node(const Vine& vine, const HouseRules& house, const Axis& axis, std::uint32_t last) {
    const Node& joint = vine.nodes_of(axis)[last + 1];
    const Length room = std::max(Length{}, joint.joint - house.old_wood_stub.short_of_node);
    return {axis.id, node_id(axis.id, last), tenths_below(std::min(times_one_and_a_half(joint.major), room))};
}

// A stub of an axis taken off at its parent: by the width of its collar, unless the joint above is so much thinner or
// thicker that this would be no stub of one to two widths there.
DueCut at_the_parent(const Vine& vine, const HouseRules& house, const Axis& axis) {
    const auto nodes = vine.nodes_of(axis);
    const Length collar = nodes[0].joint;
    const Node& above = nodes[nodes.size() > 1 ? 1 : 0];
    Length stub = times_one_and_a_half(nodes[0].major);
    const Band<PerMille>& asks = house.old_wood_stub.band;
    const Length left = collar + tenths_below(stub - collar);  // of that stub, once the cut is made
    const PerMille ratio{static_cast<std::int32_t>(std::int64_t{1000} * left.count / mean_diameter(above).count)};
    if (stub > collar && (ratio < asks.full.low || ratio > asks.full.high)) stub = times_one_and_a_half(above.major);
    const Length near = house.old_wood_stub.short_of_node;
    if (stub <= collar) {  // in the collar: at most to 5 mm below the crown
        stub = std::min(stub, std::max(Length{}, collar - near));
        return {axis.id, nodes[0].id, tenths_below(stub - collar)};
    }
    const Length room = std::max(Length{}, wood_beyond(vine, axis, 0) - near);
    return {axis.id, nodes[0].id, tenths_below(std::min(stub - collar, room))};
}

// Whether an earlier due cut takes this axis off.
bool goes_with(const Axis& axis, const std::vector<DueCut>& due, const Vine& vine) {
    for (const Axis* a = &axis; a->parent; a = vine.find(axis_of(a->parent)))
        for (const DueCut& cut : due)
            if (cut.axis == axis_of(a->parent) && (index_of(a->parent) > index_of(cut.past) || cut.beyond.count < 0))
                return true;
    return false;
}

}  // namespace

std::vector<DueCut> due_old_wood_cuts(const Vine& before, const HouseRules& house, std::span<const AxisId> kept) {
    const std::vector<std::uint32_t> outermost = outermost_bearing(before, kept);
    std::vector<DueCut> due;
    for (std::size_t row = 0; row < before.axes.size(); ++row) {
        const Axis& axis = before.axes[row];
        if (axis.removed || is_trunk(axis) || age(before, axis) != 2 || is_arm(before, axis)) continue;
        if (outermost[row] != bears_none && outermost[row] + 1 >= axis.node_count) continue;  // nothing stands beyond
        if (goes_with(axis, due, before)) continue;
        due.push_back(outermost[row] == bears_none ? at_the_parent(before, house, axis)
                                                   : past_node(before, house, axis, outermost[row]));
    }
    return due;
}

Length from_surface(const Vine& vine, const Axis& axis, std::uint32_t index, Length beyond) {
    return vine.nodes_of(axis)[0].joint + along(vine, axis, index) + beyond;
}

}  // namespace spurwright::rules
