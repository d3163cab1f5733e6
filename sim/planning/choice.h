// A choice: which cane to each side, cut where, and which spur to each side, with how many buds. The space of choices
// is every one that a careful pruner could mean on this vine; what is left out of it could not stand (a cane that would
// break) or is another system (older wood). Must not know: marks.
#pragma once

#include <array>
#include <vector>

#include "sim/rules/house_rules.h"
#include "sim/vine/vine.h"

namespace spurwright::planning {

// At least one cane; all axes different.
struct Choice {
    NodeId left_cane, right_cane;       // the cut node, which says the cane; none: no cane is laid to that side
    AxisId left_spur, right_spur;       // none: no spur
    int left_buds = 0, right_buds = 0;  // count buds kept on the spur, 1 to 3
    bool operator==(const Choice&) const = default;
};

// One axis of one-year wood and what it may become.
struct Piece {
    AxisId axis;
    Side side{};          // of its wood: the only side it may be a spur of, so that choice and wood are one to one
    bool sucker = false;  // of trunk or rootstock: laid, it is held under a cap; never a spur
    std::array<bool, 2> lies{};  // may be laid to the left, to the right: it has the buds and does not break on its way
    std::vector<std::uint32_t> cut_nodes;   // bearing a count bud, from the lowest a cane may be cut at to the ripe end
    std::vector<std::uint32_t> spur_nodes;  // of the first, second, third count bud; empty where it is no spur
};

// Live one-year axes on older wood that may be a cane or a spur, by id. A cane keeps house.cane_count.floor_buds count
// buds or more (4, our choice). Laterals are never pieces.
std::vector<Piece> pieces(const Vine& vine, const rules::HouseRules& house);

}  // namespace spurwright::planning
