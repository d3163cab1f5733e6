// Every choice of the tables by plain nested loops, in the order of plans: the oracle that the exact search and the
// exact counts are held against. Slow on purpose and free of every idea that they use.
#pragma once

#include <cstdint>
#include <optional>

#include "sim/planning/tables.h"

namespace spurwright::planning {

// Calls visit(pick) for every choice, the lower pick first.
template <class Visit>
void for_each_pick(const Tables& tables, Visit visit) {
    const std::uint16_t count = tables.count();
    const auto next = [count](std::uint16_t row) {
        return static_cast<std::uint16_t>(row + 1 < count ? row + 1 : no_piece);
    };
    const auto first = static_cast<std::uint16_t>(count > 0 ? 0 : no_piece);
    const auto cuts = [&](std::uint16_t row, Side side) {
        return row == no_piece ? 1 : tables.candidates[row].cut_count(side);
    };
    const auto lengths = [&](std::uint16_t row) {
        return row == no_piece ? std::size_t{1} : tables.candidates[row].spur.size();
    };
    Pick p;
    for (p.left_cane = first;; p.left_cane = next(p.left_cane)) {
        for (p.right_cane = first;; p.right_cane = next(p.right_cane)) {
            for (p.left_cut = 0; p.left_cut < cuts(p.left_cane, Side::left); ++p.left_cut)
                for (p.right_cut = 0; p.right_cut < cuts(p.right_cane, Side::right); ++p.right_cut)
                    for (p.left_spur = first;; p.left_spur = next(p.left_spur)) {
                        for (std::size_t l = 0; l < lengths(p.left_spur); ++l) {
                            p.left_buds = static_cast<std::uint16_t>(p.left_spur == no_piece ? 0 : l + 1);
                            for (p.right_spur = first;; p.right_spur = next(p.right_spur)) {
                                for (std::size_t m = 0; m < lengths(p.right_spur); ++m) {
                                    p.right_buds = static_cast<std::uint16_t>(p.right_spur == no_piece ? 0 : m + 1);
                                    if (is_choice(tables, p)) visit(static_cast<const Pick&>(p));
                                }
                                if (p.right_spur == no_piece) break;
                            }
                        }
                        if (p.left_spur == no_piece) break;
                    }
            if (p.right_cane == no_piece) break;
        }
        if (p.left_cane == no_piece) break;
    }
}

// The best choice, or nothing where there is none.
std::optional<Ranked> best_by_force(const Tables& tables);

struct Tally {
    std::uint64_t counted = 0, better = 0, equal = 0;  // all choices; with more points; with as many
    bool operator==(const Tally&) const = default;
};
Tally tally_by_force(const Tables& tables, int points);

}  // namespace spurwright::planning
