// The pieces of a choice in the order of plans, `none` last, so that the search, the count and the ranked list walk the
// same space. Views into the tables: valid while those stand unchanged.
#pragma once

#include "sim/planning/tables.h"

namespace spurwright::planning {

// A cane laid to one side, or none: then one cut node with no bud, so that nothing needs a special case.
struct LaidCane {
    std::uint16_t row = no_piece;
    bool sucker = false;
    int cuts = 1;
    int first_buds = 0;
    std::array<const std::int32_t*, 2> worth{};  // [load], one a cut node
    std::int32_t highest = 0;                    // of both loads
};
std::vector<LaidCane> laid_canes(const Tables& tables, Side side);

// A spur of one side at one length beside the cane laid to that side, or none.
struct SpurWay {
    std::uint16_t row = no_piece, buds = 0;
    std::int32_t worth = 0;  // its own and beside the cane
};
// All but those of the axis laid there; the other side's cane may take one more axis away.
std::vector<SpurWay> spur_ways(const Tables& tables, Side side, std::uint16_t cane);

// The best site of each length beside one cane, and the runner-up for where the other side's cane takes the best.
inline constexpr std::int32_t no_site = -10'000;  // worth less than any spur
struct Site {
    std::int32_t worth = no_site;
    std::uint16_t row = no_piece;
};
struct Sites {
    std::array<std::array<Site, 2>, most_spur_buds + 1> of{};  // [buds]; 0 is no spur
    std::int32_t highest = no_site;

    std::int32_t worth(std::size_t buds, std::uint16_t taken) const {
        const auto& best = of[buds];
        return best[0].row == taken && taken != no_piece ? best[1].worth : best[0].worth;
    }
};
Sites sites_beside(const Tables& tables, Side side, std::uint16_t cane);

// A side that would be bare without a spur beside this cane.
inline bool bare_without_spur(const Tables& tables, Side side, const LaidCane& cane) {
    return cane.row == no_piece && tables.had_cane[at(side)];
}

// Two canes that may be laid together: not the same axis, not both none; on a vine of a single cane one of them none.
inline bool may_stand_together(const Tables& tables, const LaidCane& left, const LaidCane& right) {
    return left.row != right.row && (!tables.single || left.row == no_piece || right.row == no_piece);
}

// Spurs of so many buds, one a side: on a vine of a single cane one of them is none.
inline bool may_both_be_kept(const Tables& tables, std::size_t left_buds, std::size_t right_buds) {
    return !tables.single || left_buds == 0 || right_buds == 0;
}

}  // namespace spurwright::planning
