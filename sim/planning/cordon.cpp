#include "sim/planning/cordon.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/piece_points.h"

namespace spurwright::planning {
namespace {

using Arm = CordonTables::Arm;

constexpr std::int32_t no_row = -1'000'000;  // less than any sum
constexpr std::uint64_t most_counted = 0x7fff'ffff'ffff'ffff;

int row_buds(const std::vector<RowPick>& spurs) {
    int buds = 0;
    for (const RowPick& spur : spurs) buds += spur.buds;
    return buds;
}

std::int32_t row_worth(const Arm& arm, const std::vector<RowPick>& spurs) {
    std::int32_t sum = 0;
    std::size_t inner = arm.canes.size();
    for (const RowPick& spur : spurs) {
        sum += arm.canes[spur.row].worth[spur.buds - 1u] + arm.place_of(spur.row, inner);
        inner = spur.row;
    }
    return sum;
}

bool arm_bare(const Arm& arm, bool nothing_kept) { return nothing_kept && arm.asked > 0; }

int cordon_cap(const CordonTables& tables, bool is_bare, int buds) {
    int cap = no_cap;
    if (is_bare) cap = std::min(cap, tables.hard_cap);
    if (buds >= tables.over_from) cap = std::min(cap, tables.soft_cap);
    return cap;
}

// The best that can follow a spur on one arm: by that spur, how many more may come, and the buds they hold exactly.
class ArmSearch {
public:
    explicit ArmSearch(const Arm& arm)
        : arm_(arm), count_(arm.canes.size()), more_(static_cast<std::size_t>(arm.asked)), buds_(more_ * most_spur_buds + 1),
          best_((count_ + 1) * (more_ + 1) * buds_, no_row) {
        for (std::size_t more = 0; more <= more_; ++more)
            for (std::size_t after = 0; after <= count_; ++after) {
                at(after, more, 0) = 0;
                if (more == 0) continue;
                for (std::size_t x = first_after(after); x < count_; ++x)
                    for (std::size_t l = 1; l <= arm.canes[x].worth.size(); ++l)
                        for (std::size_t s = l; s < buds_; ++s) {
                            const std::int32_t rest = at(x, more - 1, s - l);
                            if (rest == no_row) continue;
                            std::int32_t& best = at(after, more, s);
                            best = std::max(best, step(x, l, after) + rest);
                        }
            }
    }

    std::size_t most_buds() const { return buds_ - 1; }
    // Of a whole row with so many buds; `no_row` where there is none.
    std::int32_t best(std::size_t buds) const { return best_[index(count_, more_, buds)]; }

    // The lowest row of those worth that much.
    std::vector<RowPick> lowest(std::size_t buds) const {
        std::vector<RowPick> row;
        std::size_t after = count_, more = more_;
        std::int32_t left = best(buds);
        while (buds > 0) {
            const RowPick next = lowest_next(after, more, buds, left);
            row.push_back(next);
            left -= step(next.row, next.buds, after);
            after = next.row;
            buds -= next.buds;
            --more;
        }
        return row;
    }

private:
    std::size_t first_after(std::size_t after) const { return after == count_ ? 0 : after + 1; }
    std::size_t index(std::size_t after, std::size_t more, std::size_t buds) const {
        return (after * (more_ + 1) + more) * buds_ + buds;
    }
    std::int32_t& at(std::size_t after, std::size_t more, std::size_t buds) { return best_[index(after, more, buds)]; }
    std::int32_t step(std::size_t x, std::size_t l, std::size_t after) const {
        return arm_.canes[x].worth[l - 1] + arm_.place_of(x, after);
    }
    RowPick lowest_next(std::size_t after, std::size_t more, std::size_t buds, std::int32_t worth) const {
        for (std::size_t x = first_after(after); x < count_; ++x)
            for (std::size_t l = 1; l <= std::min(arm_.canes[x].worth.size(), buds); ++l) {
                const std::int32_t rest = best_[index(x, more - 1, buds - l)];
                if (rest != no_row && step(x, l, after) + rest == worth)
                    return {static_cast<std::uint16_t>(x), static_cast<std::uint16_t>(l)};
            }
        SPURWRIGHT_CHECK(buds, ==, std::size_t{0});  // some spur gave this worth
        return {};
    }

    const Arm& arm_;
    std::size_t count_, more_, buds_;
    std::vector<std::int32_t> best_;
};

std::uint64_t held_sum(std::uint64_t a, std::uint64_t b) { return a > most_counted - b ? most_counted : a + b; }
std::uint64_t held_product(std::uint64_t a, std::uint64_t b) { return b && a > most_counted / b ? most_counted : a * b; }

// How many rows of one arm hold so many buds and are worth so much, less the least a row can be worth.
class ArmCount {
public:
    explicit ArmCount(const Arm& arm) : buds_(static_cast<std::size_t>(arm.asked) * most_spur_buds + 1) {
        const std::size_t count = arm.canes.size(), most = static_cast<std::size_t>(arm.asked);
        find_range(arm);
        ways_.assign(buds_, Worths(width_, 0));
        ways_[0][worth_at(0)] = 1;  // nothing kept
        std::vector<Ending> endings(count, Ending(most + 1, std::vector<Worths>(buds_)));
        for (std::size_t x = 0; x < count; ++x)
            for (std::size_t l = 1; l <= arm.canes[x].worth.size() && most > 0; ++l) {
                const std::int32_t worth = arm.canes[x].worth[l - 1];
                add_one(endings[x][1][l], worth_at(worth + arm.place_of(x, count)), 1);
                for (std::size_t p = 0; p < x; ++p)
                    for (std::size_t n = 1; n < most; ++n)
                        for (std::size_t s = 0; s + l < buds_; ++s)
                            if (!endings[p][n][s].empty())
                                add_all(endings[x][n + 1][s + l], endings[p][n][s], worth + arm.place_of(x, p));
            }
        for (const Ending& ending : endings)
            for (const auto& by_buds : ending)
                for (std::size_t s = 0; s < buds_; ++s)
                    for (std::size_t w = 0; w < by_buds[s].size(); ++w) ways_[s][w] = held_sum(ways_[s][w], by_buds[s][w]);
    }

    std::size_t buds() const { return buds_; }
    std::size_t width() const { return width_; }
    std::int32_t worth_of_column(std::size_t column) const { return static_cast<std::int32_t>(column) + lowest_; }
    std::uint64_t rows(std::size_t buds, std::size_t column) const { return ways_[buds][column]; }

    // From each column upward.
    std::vector<std::uint64_t> upward(std::size_t buds) const {
        std::vector<std::uint64_t> sums(width_ + 1, 0);
        for (std::size_t w = width_; w-- > 0;) sums[w] = held_sum(sums[w + 1], ways_[buds][w]);
        return sums;
    }

private:
    using Worths = std::vector<std::uint64_t>;
    using Ending = std::vector<std::vector<Worths>>;  // [spurs][buds]

    void find_range(const Arm& arm) {
        std::int32_t low = 0, high = 0;
        for (const auto& cane : arm.canes)
            for (const std::int32_t worth : cane.worth) low = std::min(low, worth), high = std::max(high, worth);
        std::int32_t place_low = 0, place_high = 0;
        for (const std::int32_t place : arm.place) place_low = std::min(place_low, place), place_high = std::max(place_high, place);
        lowest_ = arm.asked * (low + place_low);
        width_ = static_cast<std::size_t>(arm.asked * (high + place_high) - lowest_) + 1;
    }
    std::size_t worth_at(std::int32_t worth) const { return static_cast<std::size_t>(worth - lowest_); }
    void add_one(Worths& to, std::size_t column, std::uint64_t some) const {
        if (to.empty()) to.assign(width_, 0);
        to[column] = held_sum(to[column], some);
    }
    void add_all(Worths& to, const Worths& from, std::int32_t more) const {
        for (std::size_t w = 0; w < from.size(); ++w)
            if (from[w]) add_one(to, static_cast<std::size_t>(static_cast<std::int32_t>(w) + more), from[w]);
    }

    std::size_t buds_, width_ = 1;
    std::int32_t lowest_ = 0;
    std::vector<Worths> ways_;
};

Arm arm_of(const Vine& vine, const rules::HouseRules& house, const rules::Offers& offers, const rules::Asked& asked, Side side) {
    const std::vector<rules::RowCane>& row = offers.row[rules::index_of(side)];
    const Tenths each = asked.of_spur(rules::RuleName::spur_count, side);
    Arm arm;
    arm.asked = offers.row_asked[rules::index_of(side)];
    for (const rules::RowCane& cane : row) {
        const Axis& axis = *vine.find(cane.axis);
        const auto buds = std::min<std::size_t>(most_spur_buds, ripe_count_nodes(vine, axis, house.habits()).size());
        CordonTables::Cane piece{cane.axis, {}};
        for (std::size_t n = 1; n <= buds; ++n) {
            Tenths worth = each;
            const rules::SpurFacts spur = rules::measure_spur(vine, house, axis, static_cast<int>(n));
            for (const rules::RuleMark& m : rules::spur_marks(spur, house))
                if (m.rule != rules::RuleName::spur_count) worth += rules::points_of(asked.of_spur(m.rule, side), m.mark);
            piece.worth.push_back(worth.count);
        }
        arm.canes.push_back(std::move(piece));
    }
    for (std::size_t x = 0; x < row.size(); ++x)
        for (std::size_t p = 0; p <= row.size(); ++p)
            arm.place.push_back(
                rules::row_place_points(rules::place_in(row, row[x], p < row.size() ? &row[p] : nullptr, house), side, house, asked)
                    .count);
    return arm;
}

}  // namespace

CordonTables cordon_tables(const Vine& vine, const rules::HouseRules& house) {
    const rules::Offers offers = rules::offers(vine, house);
    const rules::Asked asked = rules::asked(offers, house);
    CordonTables tables;
    int most = 0;
    for (const Side side : both_sides) {
        tables.arms[at(side)] = arm_of(vine, house, offers, asked, side);
        most += tables.arms[at(side)].asked * most_spur_buds;
    }
    const int target = rules::target_buds(house, vine.spacing);
    for (int buds = 0; buds <= most; ++buds)
        tables.totals.push_back(rules::load_points({0, buds, buds, vine.spacing}, house, asked).count);
    tables.over_from = 0;
    while (tables.over_from <= most && !rules::overloaded(tables.over_from, target, house)) ++tables.over_from;
    tables.constant = rules::canonical_points(asked).count + asked.of_vine(rules::RuleName::suckers).count;
    tables.hard_cap = house.caps.hard.count;
    tables.soft_cap = house.caps.soft.count;
    return tables;
}

bool is_choice(const CordonTables& tables, const CordonPick& pick) {
    for (std::size_t side = 0; side < 2; ++side) {
        const Arm& arm = tables.arms[side];
        const auto& spurs = pick.spurs[side];
        if (spurs.size() > static_cast<std::size_t>(arm.asked)) return false;
        for (std::size_t i = 0; i < spurs.size(); ++i)
            if (spurs[i].row >= arm.canes.size() || (i > 0 && spurs[i].row <= spurs[i - 1].row) || spurs[i].buds < 1 ||
                spurs[i].buds > arm.canes[spurs[i].row].worth.size())
                return false;
    }
    return true;
}

std::int32_t sum_of(const CordonTables& tables, const CordonPick& pick) {
    std::int32_t sum = tables.constant;
    int buds = 0;
    for (std::size_t side = 0; side < 2; ++side) {
        sum += row_worth(tables.arms[side], pick.spurs[side]);
        buds += row_buds(pick.spurs[side]);
    }
    return sum + tables.totals[static_cast<std::size_t>(buds)];
}

int held_points(const CordonTables& tables, std::int32_t sum, int buds, const std::array<bool, 2>& nothing_kept) {
    const bool is_bare = arm_bare(tables.arms[0], nothing_kept[0]) || arm_bare(tables.arms[1], nothing_kept[1]);
    return std::min<int>(sum, cordon_cap(tables, is_bare, buds));
}

int points_of(const CordonTables& tables, const CordonPick& pick) {
    return held_points(tables, sum_of(tables, pick), row_buds(pick.spurs[0]) + row_buds(pick.spurs[1]),
                       {pick.spurs[0].empty(), pick.spurs[1].empty()});
}

bool ranks_above(const CordonRanked& one, const CordonRanked& other) {
    if (one.points != other.points) return one.points > other.points;
    if (one.sum != other.sum) return one.sum > other.sum;
    return one.pick < other.pick;
}

CordonRanked best_pick(const CordonTables& tables) {
    const ArmSearch near(tables.arms[0]), far(tables.arms[1]);
    int points = no_row;
    std::int32_t sum = no_row;
    std::vector<std::pair<std::size_t, std::size_t>> tied;  // buds on the two arms
    for (std::size_t l = 0; l <= near.most_buds(); ++l)
        for (std::size_t m = 0; m <= far.most_buds(); ++m) {
            if (near.best(l) == no_row || far.best(m) == no_row) continue;
            const std::int32_t here = tables.constant + near.best(l) + far.best(m) + tables.totals[l + m];
            const bool is_bare = arm_bare(tables.arms[0], l == 0) || arm_bare(tables.arms[1], m == 0);
            const int capped = std::min<int>(here, cordon_cap(tables, is_bare, static_cast<int>(l + m)));
            if (capped < points || (capped == points && here < sum)) continue;
            if (capped > points || here > sum) tied.clear();
            points = capped;
            sum = here;
            tied.emplace_back(l, m);
        }
    std::optional<CordonRanked> best;
    for (const auto& buds : tied) {
        const CordonRanked now{{{near.lowest(buds.first), far.lowest(buds.second)}}, points, sum};
        if (!best || ranks_above(now, *best)) best = now;
    }
    return *best;
}

std::uint64_t count_choices(const CordonTables& tables) {
    std::array<std::uint64_t, 2> rows{};
    for (std::size_t side = 0; side < 2; ++side) {
        const Arm& arm = tables.arms[side];
        std::vector<std::uint64_t> ways(static_cast<std::size_t>(arm.asked) + 1, 0);  // by spurs kept
        ways[0] = 1;
        for (const CordonTables::Cane& cane : arm.canes)
            for (std::size_t n = ways.size() - 1; n > 0; --n)
                ways[n] = held_sum(ways[n], held_product(ways[n - 1], cane.worth.size()));
        for (const std::uint64_t some : ways) rows[side] = held_sum(rows[side], some);
    }
    return held_product(rows[0], rows[1]);
}

Tally tally(const CordonTables& tables, int points) {
    const ArmCount near(tables.arms[0]), far(tables.arms[1]);
    Tally found{count_choices(tables), 0, 0};
    for (std::size_t m = 0; m < far.buds(); ++m) {
        const std::vector<std::uint64_t> upward = far.upward(m);
        // Rows of the far arm that are worth at least so much.
        const auto at_least = [&](std::int64_t worth) {
            const std::int64_t column = worth - far.worth_of_column(0);
            return upward[static_cast<std::size_t>(std::clamp<std::int64_t>(column, 0, static_cast<std::int64_t>(far.width())))];
        };
        for (std::size_t l = 0; l < near.buds(); ++l) {
            const bool is_bare = arm_bare(tables.arms[0], l == 0) || arm_bare(tables.arms[1], m == 0);
            const int cap = cordon_cap(tables, is_bare, static_cast<int>(l + m));
            if (cap < points) continue;
            for (std::size_t w = 0; w < near.width(); ++w) {
                const std::uint64_t rows = near.rows(l, w);
                if (rows == 0) continue;
                const std::int64_t rest = std::int64_t{points} - tables.constant - tables.totals[l + m] - near.worth_of_column(w);
                const std::uint64_t above = cap > points ? at_least(rest + 1) : 0;
                found.better = held_sum(found.better, held_product(rows, above));
                found.equal = held_sum(found.equal, held_product(rows, at_least(rest) - above));
            }
        }
    }
    return found;
}

CordonChoice choice_of(const CordonTables& tables, const CordonPick& pick) {
    CordonChoice choice;
    for (std::size_t side = 0; side < 2; ++side)
        for (const RowPick& spur : pick.spurs[side]) choice[side].push_back({tables.arms[side].canes[spur.row].axis, spur.buds});
    return choice;
}

BestCordon best_of_cordon(const Vine& vine, const rules::HouseRules& house) {
    const CordonTables tables = cordon_tables(vine, house);
    const CordonRanked best = best_pick(tables);
    CordonChoice choice = choice_of(tables, best.pick);
    Plan plan = complete(vine, house, choice);
    return {std::move(choice), std::move(plan), {best.points}, {best.sum}};
}

}  // namespace spurwright::planning
