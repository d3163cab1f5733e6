// The plans as good: every choice with at least so many points, counted exactly and grouped by the canes and spurs they
// keep. Groups are found without listing plans: for each pair of canes the best sum by buds on the spurs, then each pair
// of spurs once. Must not know: vines, tolerances.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "sim/planning/tables.h"

namespace spurwright::planning {

// All choices within reach that keep these four axes: rows of the tables, no_piece where there is none.
struct PlanGroup {
    struct Span {
        std::uint16_t low = 0, high = 0;
        bool operator==(const Span&) const = default;
    };
    std::uint16_t left_cane = no_piece, right_cane = no_piece, left_spur = no_piece, right_spur = no_piece;
    std::array<Span, 2> cuts{}, buds{};  // by side, of the members: cut node from 0, count buds of the spur
    std::uint64_t count = 0;
    int low = 0, high = 0;  // points, tenths
    bool holds(const Pick& pick) const {
        return pick.left_cane == left_cane && pick.right_cane == right_cane && pick.left_spur == left_spur &&
               pick.right_spur == right_spur;
    }
    bool operator==(const PlanGroup&) const = default;
};

struct AsGood {
    std::uint64_t count = 0, groups = 0;  // exact
    std::vector<PlanGroup> shown;         // the best first: by their best points, then by rows
    bool operator==(const AsGood&) const = default;
};

// Plans with `least` points (tenths) or more; at most `most_shown` groups.
AsGood as_good(const Tables& tables, int least, std::size_t most_shown);

}  // namespace spurwright::planning
