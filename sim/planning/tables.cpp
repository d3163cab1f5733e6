#include "sim/planning/tables.h"

#include <algorithm>
#include <cstdlib>

#include "sim/core/check.h"

namespace spurwright::planning {
namespace {

int buds_of(const Tables& tables, std::uint16_t cane, std::uint16_t cut) {
    return cane == no_piece ? 0 : tables.candidates[cane].first_buds + cut;
}

int most_buds(const Tables& tables, Side side) {
    int most = 0;
    for (const Candidate& c : tables.candidates)
        if (c.lies(side)) most = std::max(most, c.first_buds + c.cut_count(side) - 1);
    return most;
}

std::int32_t largest(const std::vector<std::int32_t>& values) {
    std::int32_t most = 0;
    for (const std::int32_t v : values) most = std::max(most, std::abs(v));
    return most;
}

bool cane_exists(const Tables& tables, std::uint16_t cane, std::uint16_t cut, Side side) {
    if (cane == no_piece) return cut == 0;
    return cane < tables.count() && cut < tables.candidates[cane].cut_count(side);
}

bool spur_exists(const Tables& tables, std::uint16_t spur, std::uint16_t buds, Side side) {
    if (spur == no_piece) return buds == 0;
    return spur < tables.count() && tables.candidates[spur].side == side && buds >= 1 &&
           buds <= tables.candidates[spur].spur.size();
}

}  // namespace

void check_tables(const Tables& tables) {
    const std::size_t n = tables.candidates.size();
    SPURWRIGHT_CHECK(n, <, std::size_t{no_piece});
    SPURWRIGHT_CHECK(tables.beside.size(), ==, n * (n + 1));
    SPURWRIGHT_CHECK(tables.pair.size(), ==, (n + 1) * (n + 1));
    SPURWRIGHT_CHECK(tables.fruiting_totals, >, most_buds(tables, Side::left) + most_buds(tables, Side::right));
    SPURWRIGHT_CHECK(tables.totals.size(), ==, static_cast<std::size_t>(tables.fruiting_totals * spur_states));
    std::int32_t cane = 0, spur = 0;
    for (std::size_t s = 0; s < 2; ++s) {
        spur = std::max(spur, std::abs(tables.no_spur[s]));
        for (const std::int32_t v : tables.no_cane[s]) cane = std::max(cane, std::abs(v));
    }
    for (const Candidate& c : tables.candidates) {
        SPURWRIGHT_CHECK(c.spur.size(), <=, std::size_t{most_spur_buds});
        SPURWRIGHT_CHECK(c.first_buds, >=, 0);
        spur = std::max(spur, largest(c.spur));
        for (const auto& side : c.cane) {
            SPURWRIGHT_CHECK(side[0].size(), ==, side[1].size());
            SPURWRIGHT_CHECK(side[0].size(), <=, std::size_t{255});
            for (const auto& load : side) cane = std::max(cane, largest(load));
        }
    }
    const std::int32_t sum = std::abs(tables.constant) + 2 * cane + 2 * spur + 2 * largest(tables.beside) +
                             largest(tables.pair) + largest(tables.totals);
    SPURWRIGHT_CHECK(sum, <=, highest_sum);
}

void shape_matrices(Tables& tables) {
    const std::size_t n = tables.candidates.size();
    tables.beside.assign(n * (n + 1), 0);
    tables.pair.assign((n + 1) * (n + 1), 0);
    tables.fruiting_totals = most_buds(tables, Side::left) + most_buds(tables, Side::right) + 1;
    tables.totals.assign(static_cast<std::size_t>(tables.fruiting_totals * spur_states), 0);
}

int fruiting_buds(const Tables& tables, const Pick& pick) {
    return buds_of(tables, pick.left_cane, pick.left_cut) + buds_of(tables, pick.right_cane, pick.right_cut);
}

int spur_buds(const Pick& pick) { return pick.left_buds + pick.right_buds; }

std::int32_t sum_of(const Tables& tables, const Pick& pick) {
    const int fruiting = fruiting_buds(tables, pick), on_spurs = spur_buds(pick);
    const std::size_t load = at(fruiting + on_spurs < tables.enough_from ? Load::under : Load::enough);
    const auto cane = [&](std::uint16_t row, std::uint16_t cut, Side side) {
        return row == no_piece ? tables.no_cane[at(side)][load] : tables.candidates[row].cane[at(side)][load][cut];
    };
    const auto spur = [&](std::uint16_t row, std::uint16_t buds, std::uint16_t beside, Side side) {
        if (row == no_piece) return tables.no_spur[at(side)];
        return tables.candidates[row].spur[buds - 1u] + tables.beside_of(row, beside);
    };
    return tables.constant + cane(pick.left_cane, pick.left_cut, Side::left) +
           cane(pick.right_cane, pick.right_cut, Side::right) + tables.pair_of(pick.left_cane, pick.right_cane) +
           spur(pick.left_spur, pick.left_buds, pick.left_cane, Side::left) +
           spur(pick.right_spur, pick.right_buds, pick.right_cane, Side::right) + tables.totals_of(fruiting, on_spurs);
}

int cap_of(const Tables& tables, const Pick& pick) {
    int cap = no_cap;
    if (fruiting_buds(tables, pick) + spur_buds(pick) >= tables.over_from) cap = std::min(cap, tables.soft_cap);
    const auto sucker = [&](std::uint16_t cane) { return cane != no_piece && tables.candidates[cane].sucker; };
    const auto bare = [&](std::uint16_t cane, std::uint16_t spur, Side side) {
        return cane == no_piece && spur == no_piece && tables.had_cane[at(side)];
    };
    if (sucker(pick.left_cane) || sucker(pick.right_cane) || bare(pick.left_cane, pick.left_spur, Side::left) ||
        bare(pick.right_cane, pick.right_spur, Side::right))
        cap = std::min(cap, tables.hard_cap);
    return cap;
}

int points_of(const Tables& tables, const Pick& pick) {
    return std::min<int>(sum_of(tables, pick), cap_of(tables, pick));
}

bool is_choice(const Tables& tables, const Pick& pick) {
    if (pick.left_cane == no_piece && pick.right_cane == no_piece) return false;
    if (!cane_exists(tables, pick.left_cane, pick.left_cut, Side::left) ||
        !cane_exists(tables, pick.right_cane, pick.right_cut, Side::right) ||
        !spur_exists(tables, pick.left_spur, pick.left_buds, Side::left) ||
        !spur_exists(tables, pick.right_spur, pick.right_buds, Side::right))
        return false;
    if (tables.single && ((pick.left_cane != no_piece && pick.right_cane != no_piece) || (pick.left_buds && pick.right_buds)))
        return false;
    const std::uint16_t kept[] = {pick.left_cane, pick.right_cane, pick.left_spur, pick.right_spur};
    for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t k = i + 1; k < 4; ++k)
            if (kept[i] != no_piece && kept[i] == kept[k]) return false;
    return true;
}

}  // namespace spurwright::planning
