// The exact search as plain numbers: what each piece of a choice is worth, in tenths of a point, with every bond that
// the rules allow between pieces. Filled from a vine by vine_tables.h, or by hand in tests. Must not know: vines,
// rules.
//
// A choice lays cane a to the left cut at its node i, cane b to the right cut at j, and keeps spur x with l buds on the
// left and spur y with m buds on the right; each may be none, at least one cane, no axis twice. Its sum is
//   constant + cane(a, i) + cane(b, j) + pair(a, b) + spur(x, l) + beside(x, a) + spur(y, m) + beside(y, b) + totals(F,
//   S)
// with F buds on the canes and S on the spurs, and its points are the sum held under the lowest cap of its class.
// Nothing but distinct axes, the pair term and the totals binds the two sides: that makes the search exact and fast.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <vector>

#include "sim/vine/words_of.h"

namespace spurwright::planning {

inline constexpr std::uint16_t no_piece = 0xffff;  // stands last in every order
inline constexpr int most_spur_buds = 3;           // 3 is a part mark, so it belongs to the space
inline constexpr int spur_states = 2 * most_spur_buds + 1;
inline constexpr int no_cap = 1'000'000;

constexpr std::size_t at(Side side) { return side == Side::right ? 1 : 0; }

// A total under the target by more than the house allows makes a gap in the wire a fault, where ripe wood was there:
// so a cane's worth has two columns.
enum class Load : unsigned char { under, enough };
constexpr std::size_t at(Load load) { return static_cast<std::size_t>(load); }

// One choice by table rows. Members stand in the order of plans, so the lower of two equally good ones is the smaller.
struct Pick {
    std::uint16_t left_cane = no_piece, right_cane = no_piece;  // rows of Tables::candidates
    std::uint16_t left_cut = 0, right_cut = 0;                  // cut node, from 0; 0 where there is no cane
    std::uint16_t left_spur = no_piece, left_buds = 0;
    std::uint16_t right_spur = no_piece, right_buds = 0;
    auto operator<=>(const Pick&) const = default;
};

// One axis of one-year wood: a cane, a spur, or either.
struct Candidate {
    Side side{};          // of its wood: the only side it may be a spur of
    bool sucker = false;  // of trunk or rootstock: laid, it is held under the hard cap
    int first_buds = 4;   // count buds kept at cut node 0; each further cut node keeps one more
    // [laid to][load][cut node]; empty where it is no cane or would break through on its way to that side's wire.
    std::array<std::array<std::vector<std::int32_t>, 2>, 2> cane;
    std::vector<std::int32_t> spur;  // worth with 1, 2, 3 buds, as far as it has them; empty where it is no spur

    bool lies(Side to) const { return !cane[at(to)][0].empty(); }
    int cut_count(Side to) const { return static_cast<int>(cane[at(to)][0].size()); }
};

// Invariants (check_tables): at most 0xfffe candidates and 255 cut nodes; both loads of a side have equal length; the
// matrices have the sizes stated; the largest sum of absolute worths stays within highest_sum.
struct Tables {
    std::vector<Candidate> candidates;
    std::array<std::array<std::int32_t, 2>, 2> no_cane{};  // [side][load]: worth of the missing cane
    std::array<std::int32_t, 2> no_spur{};                 // [side]
    std::vector<std::int32_t>
        beside;                      // spur x beside cane a of its own side: [x * (count + 1) + a], a = count for none
    std::vector<std::int32_t> pair;  // [a * (count + 1) + b], count for none
    std::vector<std::int32_t> totals;  // [S * fruiting_totals + F]
    int fruiting_totals = 1;           // F runs from 0 to one less; covers every pair of canes
    std::int32_t constant = 0;
    int enough_from = 0;             // the lowest total F + S that is not under the target
    int over_from = no_cap;          // the lowest total that is held under the soft cap
    bool single = false;             // exactly one of a and b, at most one of x and y: a vine of a single cane
    std::array<bool, 2> had_cane{};  // an acceptable cane stood on this side: without cane and spur it is bare
    int hard_cap = 400, soft_cap = 600;

    std::uint16_t count() const { return static_cast<std::uint16_t>(candidates.size()); }
    std::size_t column(std::uint16_t cane) const { return cane == no_piece ? candidates.size() : cane; }
    std::int32_t beside_of(std::uint16_t spur, std::uint16_t cane) const {
        return beside[spur * (candidates.size() + 1) + column(cane)];
    }
    std::int32_t pair_of(std::uint16_t left, std::uint16_t right) const {
        return pair[column(left) * (candidates.size() + 1) + column(right)];
    }
    std::int32_t totals_of(int fruiting, int on_spurs) const {
        return totals[static_cast<std::size_t>(on_spurs * fruiting_totals + fruiting)];
    }
};

inline constexpr std::int32_t highest_sum = 4'900;  // the search adds in 16-bit words; 1000 is a full total

// Aborts where an invariant is broken: tables are made by code, never by a user.
void check_tables(const Tables& tables);

// Zeroed matrices of the right sizes for the candidates it has, `fruiting_totals` included.
void shape_matrices(Tables& tables);

// Of one pick that is a choice of these tables.
int fruiting_buds(const Tables& tables, const Pick& pick);
int spur_buds(const Pick& pick);
std::int32_t sum_of(const Tables& tables, const Pick& pick);  // before caps
int cap_of(const Tables& tables, const Pick& pick);           // the lowest that holds, or no_cap
int points_of(const Tables& tables, const Pick& pick);

// Whether the pick is in the space: rows and cut nodes that exist, sides, distinct axes, at least one cane.
bool is_choice(const Tables& tables, const Pick& pick);

struct Ranked {
    Pick pick;
    int points = 0;        // tenths, under the caps
    std::int32_t sum = 0;  // tenths, before them
    bool operator==(const Ranked&) const = default;
};

// The order of plans: more points; then the larger sum before caps; then the lower pick.
constexpr bool better(const Ranked& one, const Ranked& other) {
    if (one.points != other.points) return one.points > other.points;
    if (one.sum != other.sum) return one.sum > other.sum;
    return one.pick < other.pick;
}

}  // namespace spurwright::planning
