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
                if (may_stand_together(left_[a], right_[b])) look_at(a, b);
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
                if (y.row != no_piece && y.row == left.row) continue;
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

    // Every member of a group that is shown.
    void fill(PlanGroup& group) const {
        const auto cuts = [&](std::uint16_t row, Side side) {
            return static_cast<std::uint16_t>(row == no_piece ? 1 : tables_.candidates[row].cut_count(side));
        };
        const auto first = [](std::uint16_t row) { return static_cast<std::uint16_t>(row == no_piece ? 0 : 1); };
        const auto longest = [&](std::uint16_t row) {
            return static_cast<std::uint16_t>(row == no_piece ? 0 : tables_.candidates[row].spur.size());
        };
        group.low = group.high;
        const auto widen = [&](PlanGroup::Span& span, std::uint16_t value) {
            if (group.count == 0) span = {value, value};
            span.low = std::min(span.low, value);
            span.high = std::max(span.high, value);
        };
        Pick p;
        p.left_cane = group.left_cane;
        p.right_cane = group.right_cane;
        p.left_spur = group.left_spur;
        p.right_spur = group.right_spur;
        for (p.left_cut = 0; p.left_cut < cuts(p.left_cane, Side::left); ++p.left_cut)
            for (p.right_cut = 0; p.right_cut < cuts(p.right_cane, Side::right); ++p.right_cut)
                for (p.left_buds = first(p.left_spur); p.left_buds <= longest(p.left_spur); ++p.left_buds)
                    for (p.right_buds = first(p.right_spur); p.right_buds <= longest(p.right_spur); ++p.right_buds) {
                        const int points = points_of(tables_, p);
                        if (points < least_) continue;
                        widen(group.cuts[0], p.left_cut);
                        widen(group.cuts[1], p.right_cut);
                        widen(group.buds[0], p.left_buds);
                        widen(group.buds[1], p.right_buds);
                        group.low = std::min(group.low, points);
                        ++group.count;
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
