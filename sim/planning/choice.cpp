#include "sim/planning/choice.h"

#include <algorithm>

#include "sim/planning/tables.h"
#include "sim/pruning/lay.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {

std::vector<Piece> pieces(const Vine& vine, const rules::HouseRules& house) {
    const CountingHabits habits = house.habits();
    const auto floor = static_cast<std::size_t>(std::max(1, house.cane_count.floor_buds));
    std::vector<Piece> found;
    for (const Axis& axis : vine.axes) {
        if (axis.removed || axis.state == AxisState::dead || !is_cane(vine, axis)) continue;
        const std::vector<std::uint32_t> buds = ripe_count_nodes(vine, axis, habits);
        Piece piece{axis.id, axis.side, is_sucker(vine, axis, habits), {}, {}, {}};
        if (buds.size() >= floor)
            for (const Side side : both_sides) piece.lies[at(side)] = !would_break(vine, axis, side);
        if (piece.lies[0] || piece.lies[1])
            piece.cut_nodes.assign(buds.begin() + static_cast<std::ptrdiff_t>(floor - 1), buds.end());
        if (!piece.sucker)
            piece.spur_nodes.assign(buds.begin(),
                                    buds.begin() + std::min<std::ptrdiff_t>(most_spur_buds, std::ssize(buds)));
        if (!piece.cut_nodes.empty() || !piece.spur_nodes.empty()) found.push_back(std::move(piece));
    }
    return found;
}

}  // namespace spurwright::planning
