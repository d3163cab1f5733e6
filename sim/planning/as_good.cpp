#include "sim/planning/as_good.h"

#include <algorithm>
#include <tuple>

#include "sim/planning/pieces.h"
#include "sim/planning/plan_count.h"

namespace spurwright::planning {
namespace {

// The best group first.
bool ranks_before(const PlanGroup& one, const PlanGroup& other) {
    const auto key = [](const PlanGroup& g) {
        return std::tuple(-g.high, g.left_cane, g.right_cane, g.left_spur, g.right_spur);
    };
    return key(one) < key(other);
}

class GroupSearch {
public:
    GroupSearch(const Tables& tables, int least, std::size_t most)
        : tables_(tables), least_(least), most_(most), left_(laid_canes(tables, Side::left)),
          right_(laid_canes(tables, Side::right)) {
        check_tables(tables);
        for (const LaidCane& cane : left_) left_ways_.push_back(gathered(spur_ways(tables, Side::left, cane.row)));
        for (const LaidCane& cane : right_) right_ways_.push_back(gathered(spur_ways(tables, Side::right, cane.row)));
        highest_total_ = *std::max_element(tables.totals.begin(), tables.totals.end());
    }

    AsGood run() {
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b)
                if (may_stand_together(tables_, left_[a], right_[b])) look_at(a, b);
        std::sort_heap(found_.shown.begin(), found_.shown.end(), ranks_before);
        for (PlanGroup& group : found_.shown) fill(group);
        return std::move(found_);
    }

private:
    static constexpr std::int32_t unreachable = -1'000'000;

    // One axis as a spur at its lengths; or none.
    struct AxisWays {
        std::uint16_t row = no_piece;
        std::array<std::int32_t, most_spur_buds + 1> worth{};  // by buds
        std::int32_t highest = unreachable;
    };
    struct SideWaysByAxis {
        std::vector<AxisWays> axes;
        std::int32_t highest = unreachable;
    };

    static SideWaysByAxis gathered(const std::vector<SpurWay>& ways) {
        SideWaysByAxis side;
        for (const SpurWay& way : ways) {
            if (side.axes.empty() || side.axes.back().row != way.row) {
                side.axes.push_back({});
                side.axes.back().row = way.row;
                side.axes.back().worth.fill(unreachable);
            }
            AxisWays& site = side.axes.back();
            site.worth[way.buds] = way.worth;
            site.highest = std::max(site.highest, way.worth);
            side.highest = std::max(side.highest, way.worth);
        }
        return side;
    }

    // The best sum of these canes and the totals, by the buds on the spurs, below the soft cap and under it.
    struct Reach {
        std::array<std::int32_t, spur_states> free{}, over{};
        std::int32_t highest = unreachable;
    };

    Reach reach(const LaidCane& left, const LaidCane& right) {
        const int bins = left.cuts + right.cuts - 1;
        for (auto& load : best_) load.assign(static_cast<std::size_t>(bins), unreachable);
        for (int i = 0; i < left.cuts; ++i)
            for (int j = 0; j < right.cuts; ++j)
                for (std::size_t load = 0; load < 2; ++load) {
                    std::int32_t& bin = best_[load][static_cast<std::size_t>(i + j)];
                    bin = std::max(bin, left.worth[load][i] + right.worth[load][j]);
                }
        Reach found;
        found.free.fill(unreachable);
        found.over.fill(unreachable);
        const std::int32_t others = tables_.constant + tables_.pair_of(left.row, right.row);
        for (int t = 0; t < bins; ++t)
            for (int s = 0; s < spur_states; ++s) {
                const int fruiting = left.first_buds + right.first_buds + t;
                const std::size_t load = at(fruiting + s < tables_.enough_from ? Load::under : Load::enough);
                const std::int32_t sum =
                    others + best_[load][static_cast<std::size_t>(t)] + tables_.totals_of(fruiting, s);
                std::int32_t& best =
                    (fruiting + s >= tables_.over_from ? found.over : found.free)[static_cast<std::size_t>(s)];
                best = std::max(best, sum);
                found.highest = std::max(found.highest, sum);
            }
        return found;
    }

    void look_at(std::size_t a, std::size_t b) {
        const LaidCane &left = left_[a], &right = right_[b];
        const SideWaysByAxis &xs = left_ways_[a], &ys = right_ways_[b];
        const bool sucker = left.sucker || right.sucker;
        if (sucker && tables_.hard_cap < least_) return;
        if (left.highest + right.highest + xs.highest + ys.highest + highest_total_ + tables_.constant +
                tables_.pair_of(left.row, right.row) <
            least_)
            return;
        const Reach best = reach(left, right);
        const bool left_bare = bare_without_spur(tables_, Side::left, left),
                   right_bare = bare_without_spur(tables_, Side::right, right);
        for (const AxisWays& x : xs.axes) {
            if (x.row != no_piece && x.row == right.row) continue;
            if (x.highest + ys.highest + best.highest < least_) continue;
            for (const AxisWays& y : ys.axes) {
                if ((y.row != no_piece && y.row == left.row) || (tables_.single && x.row != no_piece && y.row != no_piece)) continue;
                if (x.highest + y.highest + best.highest < least_) continue;
                const bool hard = sucker || (left_bare && x.row == no_piece) || (right_bare && y.row == no_piece);
                const int high = highest_points(x, y, best, hard);
                if (high >= least_) offer(left, right, x, y, high);
            }
        }
    }

    int highest_points(const AxisWays& x, const AxisWays& y, const Reach& best, bool hard) const {
        const int cap = hard ? tables_.hard_cap : no_cap;
        int high = unreachable;
        for (std::size_t l = 0; l < x.worth.size(); ++l)
            for (std::size_t m = 0; m < y.worth.size(); ++m) {
                if (x.worth[l] == unreachable || y.worth[m] == unreachable) continue;
                const std::int32_t spurs = x.worth[l] + y.worth[m];
                high = std::max({high, std::min<int>(best.free[l + m] + spurs, cap),
                                 std::min<int>(best.over[l + m] + spurs, std::min(cap, tables_.soft_cap))});
            }
        return high;
    }

    void offer(const LaidCane& left, const LaidCane& right, const AxisWays& x, const AxisWays& y, int high) {
        ++found_.groups;
        if (most_ == 0) return;
        PlanGroup group;
        group.left_cane = left.row;
        group.right_cane = right.row;
        group.left_spur = x.row;
        group.right_spur = y.row;
        group.high = high;
        auto& shown = found_.shown;
        if (shown.size() == most_) {
            if (!ranks_before(group, shown.front())) return;
            std::pop_heap(shown.begin(), shown.end(), ranks_before);
            shown.back() = group;
        } else {
            shown.push_back(group);
        }
        std::push_heap(shown.begin(), shown.end(), ranks_before);
    }

    static const LaidCane& cane_of(const std::vector<LaidCane>& canes, std::uint16_t row) {
        return *std::find_if(canes.begin(), canes.end(), [&](const LaidCane& cane) { return cane.row == row; });
    }

    static void widen(PlanGroup::Span& span, int value, bool first) {
        const auto here = static_cast<std::uint16_t>(value);
        if (first || here < span.low) span.low = here;
        if (first || here > span.high) span.high = here;
    }

    // Both spurs of a group at one pair of lengths.
    struct Lengths {
        int left = 0, right = 0;
        std::int32_t worth = 0;
        int cap = no_cap;
    };

    std::vector<Lengths> lengths_of(const PlanGroup& group, const LaidCane& left, const LaidCane& right) const {
        std::vector<Lengths> all;
        all.reserve(most_spur_buds * most_spur_buds);
        const auto ways = [&](Side side, std::uint16_t row, std::uint16_t cane) {
            std::vector<SpurWay> found;
            if (row == no_piece) return std::vector<SpurWay>{{no_piece, 0, tables_.no_spur[at(side)]}};
            const auto& worth = tables_.candidates[row].spur;
            found.reserve(worth.size());
            for (std::size_t l = 0; l < worth.size(); ++l)
                found.push_back({row, static_cast<std::uint16_t>(l + 1), worth[l] + tables_.beside_of(row, cane)});
            return found;
        };
        const auto right_ways = ways(Side::right, group.right_spur, right.row);
        for (const SpurWay& x : ways(Side::left, group.left_spur, left.row))
            for (const SpurWay& y : right_ways) {
                const bool hard = left.sucker || right.sucker ||
                                  (x.row == no_piece && bare_without_spur(tables_, Side::left, left)) ||
                                  (y.row == no_piece && bare_without_spur(tables_, Side::right, right));
                all.push_back({x.buds, y.buds, x.worth + y.worth, hard ? tables_.hard_cap : no_cap});
            }
        return all;
    }

    // Every member of a group that is shown.
    void fill(PlanGroup& group) const {
        const LaidCane &left = cane_of(left_, group.left_cane), &right = cane_of(right_, group.right_cane);
        const std::int32_t others = tables_.constant + tables_.pair_of(left.row, right.row);
        const std::vector<Lengths> lengths = lengths_of(group, left, right);
        group.low = group.high;
        for (int i = 0; i < left.cuts; ++i)
            for (int j = 0; j < right.cuts; ++j) {
                const int fruiting = left.first_buds + i + right.first_buds + j;
                const std::array<std::int32_t, 2> canes{others + left.worth[0][i] + right.worth[0][j],
                                                        others + left.worth[1][i] + right.worth[1][j]};
                for (const Lengths& spurs : lengths) {
                    const int on_spurs = spurs.left + spurs.right, total = fruiting + on_spurs;
                    const std::size_t load = at(total < tables_.enough_from ? Load::under : Load::enough);
                    int points = std::min<int>(canes[load] + spurs.worth + tables_.totals_of(fruiting, on_spurs), spurs.cap);
                    if (total >= tables_.over_from) points = std::min(points, tables_.soft_cap);
                    if (points < least_) continue;
                    const bool first = group.count++ == 0;
                    widen(group.cuts[0], i, first);
                    widen(group.cuts[1], j, first);
                    widen(group.buds[0], spurs.left, first);
                    widen(group.buds[1], spurs.right, first);
                    group.low = std::min(group.low, points);
                }
            }
    }

    const Tables& tables_;
    int least_;
    std::size_t most_;
    std::vector<LaidCane> left_, right_;
    std::vector<SideWaysByAxis> left_ways_, right_ways_;
    std::array<std::vector<std::int32_t>, 2> best_;  // [load], of the pair in hand, by buds beyond the fewest
    std::int32_t highest_total_ = 0;
    AsGood found_;
};

}  // namespace

AsGood as_good(const Tables& tables, int least, std::size_t most_shown) {
    AsGood found = GroupSearch(tables, least, most_shown).run();
    found.count = count_at_least(tables, least);
    return found;
}

}  // namespace spurwright::planning
