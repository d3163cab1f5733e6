#include "sim/rules/cordon_row.h"

#include <algorithm>
#include <tuple>

#include "sim/rules/measure_pieces.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/spur_place.h"
#include "sim/rules/spur_size.h"

namespace spurwright::rules {
namespace {

// Down from a cane to the arm that bears it.
std::optional<RowCane> placed_on_arm(const Vine& vine, const Axis& cane) {
    RowCane found;
    found.axis = cane.id;
    found.place = cane.parent;
    while (found.place) {
        const Axis& axis = *vine.find(axis_of(found.place));
        if (is_arm(vine, axis)) {
            found.along = distance_to_head(vine, found.place, cane.side);
            return found;
        }
        const auto nodes = vine.nodes_of(axis);
        for (std::uint32_t i = 0; i <= index_of(found.place); ++i) found.climbed += nodes[i].joint;
        found.place = axis.parent;
    }
    return std::nullopt;
}

void note_above_lowest(std::vector<RowCane>& row) {
    for (RowCane& cane : row) {
        const RowCane* lowest = nullptr;
        for (const RowCane& other : row)
            if (other.good && other.place == cane.place && (!lowest || other.climbed < lowest->climbed)) lowest = &other;
        if (lowest) cane.above_lowest = std::max(Length{}, cane.climbed - lowest->climbed);
    }
}

}  // namespace

bool is_arm(const Vine& vine, const Axis& axis) {
    if (vine.system != System::cordon || axis.removed || is_trunk(axis) || age(vine, axis) < 2) return false;
    const auto laid = std::lower_bound(vine.laid.begin(), vine.laid.end(), axis.id,
                                       [](const Laid& l, AxisId wanted) { return l.axis < wanted; });
    return laid != vine.laid.end() && laid->axis == axis.id;
}

std::optional<Length> arm_reach(const Vine& vine, Side side) {
    std::optional<Length> reach;
    for (const Axis& axis : vine.axes) {
        if (axis.side != side || !is_arm(vine, axis)) continue;
        for (const Node& node : vine.nodes_of(axis)) {
            if (node.removed) break;
            const Length out = side == Side::left ? -node.place.x : node.place.x;
            reach = std::max(reach.value_or(Length{}), out);
        }
    }
    return reach;
}

CordonRow cordon_row(const Vine& before, const HouseRules& house) {
    CordonRow rows;
    if (before.system != System::cordon) return rows;
    const CountingHabits habits = house.habits();
    for (const Axis& axis : before.axes) {
        if (axis.removed || axis.state != AxisState::live || !is_cane(before, axis) || is_sucker(before, axis, habits)) continue;
        if (ripe_count_nodes(before, axis, habits).empty()) continue;
        auto cane = placed_on_arm(before, axis);
        if (!cane) continue;
        cane->good = mark_spur_size(measure_spur(before, house, axis, 1), house) > no_mark &&
                     cane->climbed <= house.spur_place.climbed_half;
        rows[index_of(axis.side)].push_back(*cane);
    }
    for (auto& row : rows) {
        std::stable_sort(row.begin(), row.end(), [](const RowCane& a, const RowCane& b) {
            return std::tie(a.along, a.climbed, a.axis) < std::tie(b.along, b.climbed, b.axis);
        });
        note_above_lowest(row);
    }
    return rows;
}

int spurs_asked(const std::vector<RowCane>& row, const HouseRules& house, Length spacing) {
    const int buds = house.spur_buds.full.high.count;
    const int wanted = std::max(1, (target_buds(house, spacing) + buds) / (2 * buds));  // nearest, halves up
    int kept = 0;
    Length last;
    for (const RowCane& cane : row) {  // taking the nearest next keeps the most
        if (!cane.good || (kept > 0 && cane.along - last < house.spur_place.apart.full.low)) continue;
        last = cane.along;
        ++kept;
    }
    return std::min(kept, wanted);
}

const RowCane* find_in(const std::vector<RowCane>& row, AxisId axis) {
    const auto found = std::find_if(row.begin(), row.end(), [&](const RowCane& cane) { return cane.axis == axis; });
    return found == row.end() ? nullptr : &*found;
}

RowPlaceFacts place_in(const std::vector<RowCane>& row, const RowCane& cane, const RowCane* inner, const HouseRules& house) {
    RowPlaceFacts place{cane.climbed, cane.above_lowest, std::nullopt, false};
    if (!inner) return place;
    place.gap = cane.along - inner->along;
    const Length apart = house.spur_place.apart.full.low;
    place.could_fill = std::any_of(row.begin(), row.end(), [&](const RowCane& between) {
        return between.good && between.along - inner->along >= apart && cane.along - between.along >= apart;
    });
    return place;
}

}  // namespace spurwright::rules
