#include "sim/planning/cordon_groups.h"

#include <algorithm>
#include <map>

namespace spurwright::planning {
namespace {

using Arm = CordonTables::Arm;

struct SetRow {
    std::int32_t sum = 0;
    std::vector<RowPick> spurs;
};
bool row_ranks_above(const SetRow& one, const SetRow& other) {
    return one.sum != other.sum ? one.sum > other.sum : one.spurs < other.spurs;
}
bool same_set(const std::vector<RowPick>& one, const std::vector<RowPick>& other) {
    return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                      [](const RowPick& a, const RowPick& b) { return a.row == b.row; });
}

// Of several rows of one set the first stays; no more than `most`.
template <class Row, class Same>
void keep_best(std::vector<Row>& rows, std::size_t most, const Same& same) {
    std::vector<Row> kept;
    for (Row& row : rows) {
        if (kept.size() == most) break;
        if (std::none_of(kept.begin(), kept.end(), [&](const Row& other) { return same(row, other); }))
            kept.push_back(std::move(row));
    }
    rows = std::move(kept);
}

// The best rows of one arm that hold so many buds, each of another set of canes: what follows a spur is a list of so many
// at most, since a row beyond it is beaten by as many sets whatever comes before.
class SetSearch {
public:
    SetSearch(const Arm& arm, std::size_t most)
        : arm_(arm), most_(most), count_(arm.canes.size()), spurs_(static_cast<std::size_t>(arm.asked)),
          buds_(spurs_ * most_spur_buds + 1), rows_((count_ + 1) * (spurs_ + 1) * buds_) {
        for (std::size_t more = 0; more <= spurs_; ++more)
            for (std::size_t after = 0; after <= count_; ++after) {
                at(after, more, 0).push_back({});
                for (std::size_t s = 1; more > 0 && s < buds_; ++s) fill(after, more, s);
            }
    }
    std::size_t most_buds() const { return buds_ - 1; }
    const std::vector<SetRow>& best(std::size_t buds) const { return rows_[index(count_, spurs_, buds)]; }

private:
    std::size_t index(std::size_t after, std::size_t more, std::size_t buds) const {
        return (after * (spurs_ + 1) + more) * buds_ + buds;
    }
    std::vector<SetRow>& at(std::size_t after, std::size_t more, std::size_t buds) { return rows_[index(after, more, buds)]; }

    void fill(std::size_t after, std::size_t more, std::size_t buds) {
        std::vector<SetRow>& found = at(after, more, buds);
        for (std::size_t x = after == count_ ? 0 : after + 1; x < count_; ++x)
            for (std::size_t l = 1; l <= std::min(arm_.canes[x].worth.size(), buds); ++l)
                for (const SetRow& rest : at(x, more - 1, buds - l)) {
                    SetRow row{arm_.canes[x].worth[l - 1] + arm_.place_of(x, after) + rest.sum,
                               {{static_cast<std::uint16_t>(x), static_cast<std::uint16_t>(l)}}};
                    row.spurs.insert(row.spurs.end(), rest.spurs.begin(), rest.spurs.end());
                    found.push_back(std::move(row));
                }
        std::stable_sort(found.begin(), found.end(), row_ranks_above);
        keep_best(found, most_, [](const SetRow& one, const SetRow& other) { return same_set(one.spurs, other.spurs); });
    }

    const Arm& arm_;
    std::size_t most_, count_, spurs_, buds_;
    std::vector<std::vector<SetRow>> rows_;
};

// The plans of one set, by their buds: every way to give each spur its length.
void count_ways(const CordonTables& tables, int points, CordonGroup& group) {
    std::array<std::map<std::pair<int, std::int32_t>, std::uint64_t>, 2> ways;  // buds, sum of the row
    for (std::size_t side = 0; side < 2; ++side) {
        const Arm& arm = tables.arms[side];
        ways[side][{0, 0}] = 1;
        std::size_t inner = arm.canes.size();
        for (const RowPick& spur : group.best.spurs[side]) {
            std::map<std::pair<int, std::int32_t>, std::uint64_t> next;
            for (const auto& [so_far, n] : ways[side])
                for (std::size_t l = 1; l <= arm.canes[spur.row].worth.size(); ++l)
                    next[{so_far.first + static_cast<int>(l),
                          so_far.second + arm.canes[spur.row].worth[l - 1] + arm.place_of(spur.row, inner)}] += n;
            ways[side] = std::move(next);
            inner = spur.row;
        }
    }
    group.low = group.high;
    const std::array<bool, 2> empty{group.best.spurs[0].empty(), group.best.spurs[1].empty()};
    for (const auto& [near, n] : ways[0])
        for (const auto& [far, m] : ways[1]) {
            const int buds = near.first + far.first;
            const std::int32_t sum =
                tables.constant + near.second + far.second + tables.totals[static_cast<std::size_t>(buds)];
            const int here = held_points(tables, sum, buds, empty);
            if (here < points) continue;
            group.count += n * m;
            group.low = std::min(group.low, here);
        }
}

}  // namespace

bool CordonGroup::holds(const CordonPick& pick) const {
    return same_set(best.spurs[0], pick.spurs[0]) && same_set(best.spurs[1], pick.spurs[1]);
}

std::vector<CordonGroup> cordon_groups(const CordonTables& tables, int points, std::size_t most) {
    const SetSearch near(tables.arms[0], most), far(tables.arms[1], most);
    std::vector<CordonRanked> found;
    for (std::size_t l = 0; l <= near.most_buds(); ++l)
        for (std::size_t m = 0; m <= far.most_buds(); ++m) {
            const auto &some = near.best(l), &others = far.best(m);
            // Of pairs of the lists (i, j) at least (i + 1)(j + 1) rank as high or higher.
            for (std::size_t i = 0; i < some.size(); ++i)
                for (std::size_t j = 0; j < others.size() && (i + 1) * (j + 1) <= most; ++j) {
                    CordonRanked pair{{{some[i].spurs, others[j].spurs}}, 0, 0};
                    pair.points = points_of(tables, pair.pick);
                    pair.sum = sum_of(tables, pair.pick);
                    if (pair.points >= points) found.push_back(std::move(pair));
                }
        }
    std::stable_sort(found.begin(), found.end(), ranks_above);
    keep_best(found, most, [](const CordonRanked& one, const CordonRanked& other) {
        return same_set(one.pick.spurs[0], other.pick.spurs[0]) && same_set(one.pick.spurs[1], other.pick.spurs[1]);
    });
    std::vector<CordonGroup> groups;
    for (CordonRanked& one : found) {
        CordonGroup group{std::move(one.pick), 0, one.points, one.points};
        count_ways(tables, points, group);
        groups.push_back(std::move(group));
    }
    return groups;
}

}  // namespace spurwright::planning
