#include "sim/planning/plan_count.h"

#include <algorithm>

#include "sim/planning/count_by_halves.h"
#include "sim/planning/pieces.h"

namespace spurwright::planning {
namespace {

constexpr std::size_t columns = 8;  // one a state, and one to spare: a row is two vectors of counters
static_assert(spur_states <= static_cast<int>(columns));

struct SideWays {
    std::vector<SpurWay> ways;
    std::int32_t lowest = 0, highest = 0;  // worth
};

SideWays side_ways(const Tables& tables, Side side, std::uint16_t cane) {
    SideWays found{spur_ways(tables, side, cane)};
    found.lowest = found.highest = found.ways.front().worth;
    for (const SpurWay& way : found.ways) {
        found.lowest = std::min(found.lowest, way.worth);
        found.highest = std::max(found.highest, way.worth);
    }
    return found;
}

bool takes(const LaidCane& cane, const SpurWay& way) { return cane.row != no_piece && cane.row == way.row; }

std::uint64_t free_ways(const SideWays& side, const LaidCane& across) {
    return static_cast<std::uint64_t>(
        std::count_if(side.ways.begin(), side.ways.end(), [&](const SpurWay& w) { return !takes(across, w); }));
}

// Pairs of spurs by the buds they hold, counted from each worth upward: rows by worth, the last one empty.
struct SpurPairs {
    std::vector<std::uint32_t> from;
    std::int32_t rows = 0;
    bool any = false;

    void clear(std::int32_t wanted) {
        rows = wanted;
        from.assign(static_cast<std::size_t>(rows + 1) * columns, 0);
        any = false;
    }
    void add(std::int32_t row, std::size_t state) {
        ++from[static_cast<std::size_t>(row) * columns + state];
        any = true;
    }
    void sum_upward() {
        for (std::int32_t row = rows - 1; row >= 0; --row) {
            std::uint32_t* here = from.data() + static_cast<std::size_t>(row) * columns;
            for (std::size_t c = 0; c < columns; ++c) here[c] += here[columns + c];
        }
    }
    std::uint32_t at_least(std::int32_t row, std::size_t state) const {
        return from[static_cast<std::size_t>(std::clamp(row, 0, rows)) * columns + state];
    }
};

// From here on the count by halves is the faster one (measured on grown vines: both take about 40 ms).
constexpr std::size_t many_candidates = 56;

class Count {
public:
    Count(const Tables& tables, int points)
        : tables_(tables), points_(points), left_(laid_canes(tables, Side::left)),
          right_(laid_canes(tables, Side::right)) {
        check_tables(tables);
        for (const LaidCane& cane : left_) left_ways_.push_back(side_ways(tables, Side::left, cane.row));
        for (const LaidCane& cane : right_) right_ways_.push_back(side_ways(tables, Side::right, cane.row));
        highest_total_ = *std::max_element(tables.totals.begin(), tables.totals.end());
    }

    Tally run() {
        Tally tally;
        std::uint64_t at_least = 0;
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b) {
                const LaidCane &left = left_[a], &right = right_[b];
                if (!may_stand_together(tables_, left, right)) continue;
                const std::uint64_t xs = free_ways(left_ways_[a], right), ys = free_ways(right_ways_[b], left);
                tally.counted += static_cast<std::uint64_t>(left.cuts) * static_cast<std::uint64_t>(right.cuts) *
                                 (tables_.single ? xs + ys - 1 : xs * ys);  // no spur is a way of each side
                const std::int32_t others = tables_.constant + tables_.pair_of(left.row, right.row);
                if (left.highest + right.highest + left_ways_[a].highest + right_ways_[b].highest + highest_total_ +
                        others <
                    points_)
                    continue;
                count_spurs(a, b);
                for (const bool hard : {false, true})
                    if (spurs_[hard ? 1 : 0].any) count_canes(a, b, hard, others, at_least, tally.better);
            }
        tally.equal = at_least - tally.better;
        return tally;
    }

private:
    static constexpr std::int32_t out_of_reach = 1 << 20;

    // Row 0 stands for the lowest worth that a spur of each side has beside these canes.
    void count_spurs(std::size_t a, std::size_t b) {
        const SideWays &left = left_ways_[a], &right = right_ways_[b];
        const std::int32_t rows = left.highest - left.lowest + right.highest - right.lowest + 1;
        const bool sucker = left_[a].sucker || right_[b].sucker;
        const bool left_bare = bare_without_spur(tables_, Side::left, left_[a]),
                   right_bare = bare_without_spur(tables_, Side::right, right_[b]);
        for (SpurPairs& pairs : spurs_) pairs.any = false;
        if (!sucker) spurs_[0].clear(rows);
        if (sucker || left_bare || right_bare) spurs_[1].clear(rows);
        for (const SpurWay& x : left.ways) {
            if (takes(right_[b], x)) continue;
            for (const SpurWay& y : right.ways) {
                if (takes(left_[a], y) || !may_both_be_kept(tables_, x.buds, y.buds)) continue;
                const bool hard = sucker || (left_bare && x.buds == 0) || (right_bare && y.buds == 0);
                spurs_[hard ? 1 : 0].add(x.worth - left.lowest + y.worth - right.lowest, x.buds + std::size_t{y.buds});
            }
        }
        for (SpurPairs& pairs : spurs_)
            if (pairs.any) pairs.sum_upward();
    }

    // What the canes and spurs of a bin must reach, less what the totals give: one row a number of fruiting buds.
    struct Need {
        std::array<std::int32_t, spur_states> at, above;  // rows of SpurPairs before the canes' worth is taken off
        int under = 0;                                    // states below this stand in the column of a small load
        std::int32_t least = out_of_reach;                // canes worth less than this reach nothing
    };

    void count_canes(std::size_t a, std::size_t b, bool hard, std::int32_t others, std::uint64_t& at_least,
                     std::uint64_t& above) {
        const LaidCane &left = left_[a], &right = right_[b];
        const SpurPairs& spurs = spurs_[hard ? 1 : 0];
        const std::int32_t lowest = left_ways_[a].lowest + right_ways_[b].lowest;
        const int bins = left.cuts + right.cuts - 1, fewest = left.first_buds + right.first_buds;
        needs_.assign(static_cast<std::size_t>(bins), {});
        for (int t = 0; t < bins; ++t) {
            Need& need = needs_[static_cast<std::size_t>(t)];
            const int fruiting = fewest + t;
            need.under = std::clamp(tables_.enough_from - fruiting, 0, spur_states);
            for (int s = 0; s < spur_states; ++s) {
                const auto state = static_cast<std::size_t>(s);
                int cap = hard ? tables_.hard_cap : no_cap;
                if (fruiting + s >= tables_.over_from) cap = std::min(cap, tables_.soft_cap);
                const std::int32_t row = points_ - others - tables_.totals_of(fruiting, s) - lowest;
                need.at[state] = cap >= points_ ? row : out_of_reach;
                need.above[state] = cap > points_ ? row + 1 : out_of_reach;
                need.least = std::min(need.least, need.at[state] - spurs.rows + 1);
            }
        }
        for (int i = 0; i < left.cuts; ++i)
            for (int j = 0; j < right.cuts; ++j) {
                const Need& need = needs_[static_cast<std::size_t>(i + j)];
                const std::int32_t under = left.worth[0][i] + right.worth[0][j],
                                   enough = left.worth[1][i] + right.worth[1][j];
                if (std::max(under, enough) < need.least) continue;
                for (int s = 0; s < spur_states; ++s) {
                    const auto state = static_cast<std::size_t>(s);
                    const std::int32_t canes = s < need.under ? under : enough;
                    at_least += spurs.at_least(need.at[state] - canes, state);
                    above += spurs.at_least(need.above[state] - canes, state);
                }
            }
    }

    const Tables& tables_;
    int points_;
    std::vector<LaidCane> left_, right_;
    std::vector<SideWays> left_ways_, right_ways_;
    std::array<SpurPairs, 2> spurs_;  // [hard], of the pair in hand
    std::vector<Need> needs_;
    std::int32_t highest_total_ = 0;
};

}  // namespace

std::uint64_t count_choices(const Tables& tables) { return tally_by_pairs(tables, no_cap).counted; }
Tally tally_by_pairs(const Tables& tables, int points) { return Count(tables, points).run(); }

Tally tally(const Tables& tables, int points) {
    if (tables.candidates.size() >= many_candidates)
        if (const auto found = tally_by_halves(tables, points)) return *found;
    return tally_by_pairs(tables, points);
}

std::uint64_t count_at_least(const Tables& tables, int points) {
    const Tally found = tally(tables, points);
    return found.better + found.equal;
}

}  // namespace spurwright::planning
