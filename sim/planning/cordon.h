// What a spur cordon offers: which canes along its two arms become spurs, with how many buds. Its space, the exact best
// choice and the one full plan of it, as choice.h, best_plan.h and complete.h do for vines of canes. A choice takes at
// most as many spurs of a side as are asked; what a hand keeps beyond that only costs.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sim/planning/plan_count.h"
#include "sim/planning/tables.h"
#include "sim/pruning/plan.h"
#include "sim/rules/asked.h"

namespace spurwright::planning {

struct RowPick {
    std::uint16_t row = 0, buds = 0;  // of CordonTables::arms, 1 to 3 buds
    auto operator<=>(const RowPick&) const = default;
};
// By side, outward along the arm.
struct CordonPick {
    std::array<std::vector<RowPick>, 2> spurs;
    auto operator<=>(const CordonPick&) const = default;
};

// Plain numbers, in tenths of a point. A pick's sum is
//   constant + worth of each spur at its length + place of each beside the next inward + totals of all their buds
// held under the lowest cap that applies: a side with nothing though good canes stood there, far too many buds.
struct CordonTables {
    struct Cane {
        AxisId axis;
        std::vector<std::int32_t> worth;  // with 1, 2, 3 buds, as far as it has them
    };
    struct Arm {
        std::vector<Cane> canes;          // outward
        std::vector<std::int32_t> place;  // cane x after cane p: [x * (count + 1) + p], count where it is the first
        int asked = 0;

        std::int32_t place_of(std::size_t x, std::size_t inner) const { return place[x * (canes.size() + 1) + inner]; }
    };
    std::array<Arm, 2> arms;
    std::vector<std::int32_t> totals;  // by buds in all; covers every pick
    std::int32_t constant = 0;
    int over_from = no_cap;
    int hard_cap = 400, soft_cap = 600;
};

CordonTables cordon_tables(const Vine& vine, const rules::HouseRules& house);

bool is_choice(const CordonTables& tables, const CordonPick& pick);
std::int32_t sum_of(const CordonTables& tables, const CordonPick& pick);
int points_of(const CordonTables& tables, const CordonPick& pick);
// A sum under the caps of a choice that holds so many buds and keeps nothing on the sides said.
int held_points(const CordonTables& tables, std::int32_t sum, int buds, const std::array<bool, 2>& nothing_kept);

struct CordonRanked {
    CordonPick pick;
    int points = 0;
    std::int32_t sum = 0;
    bool operator==(const CordonRanked&) const = default;
};
// The order of plans: more points; then the larger sum before caps; then the lower pick.
bool ranks_above(const CordonRanked& one, const CordonRanked& other);

// Exact, without listing picks: on each arm the best row from every spur on, by how many more may come and the buds they
// hold; the two arms meet in the totals alone. There is always one: nothing kept is a choice.
CordonRanked best_pick(const CordonTables& tables);

// Every pick by plain recursion, in order; the oracle of tests, slow on purpose.
template <class Visit>
void for_each_pick(const CordonTables& tables, Visit visit) {
    std::array<std::vector<std::vector<RowPick>>, 2> rows;
    for (std::size_t side = 0; side < 2; ++side) {
        const CordonTables::Arm& arm = tables.arms[side];
        std::vector<RowPick> now;
        const auto go_on = [&](const auto& again, std::size_t from) -> void {
            rows[side].push_back(now);
            if (now.size() == static_cast<std::size_t>(arm.asked)) return;
            for (std::size_t x = from; x < arm.canes.size(); ++x)
                for (std::size_t buds = 1; buds <= arm.canes[x].worth.size(); ++buds) {
                    now.push_back({static_cast<std::uint16_t>(x), static_cast<std::uint16_t>(buds)});
                    again(again, x + 1);
                    now.pop_back();
                }
        };
        go_on(go_on, 0);
    }
    for (const auto& near : rows[0])
        for (const auto& far : rows[1]) visit(CordonPick{{near, far}});
}

// How many picks there are; all, with more points, with as many. Held at the largest number that is written.
std::uint64_t count_choices(const CordonTables& tables);
Tally tally(const CordonTables& tables, int points);

struct SpurKept {
    AxisId axis;
    int buds = 0;
    bool operator==(const SpurKept&) const = default;
};
using CordonChoice = std::array<std::vector<SpurKept>, 2>;  // by side
CordonChoice choice_of(const CordonTables& tables, const CordonPick& pick);

// The one full plan: everything marked, cleared and cut, nothing laid. `vine` is an uncut cordon.
Plan complete(const Vine& vine, const rules::HouseRules& house, const CordonChoice& choice);

struct BestCordon {
    CordonChoice choice;
    Plan plan;
    Tenths points, sum;
};
BestCordon best_of_cordon(const Vine& vine, const rules::HouseRules& house);

}  // namespace spurwright::planning
