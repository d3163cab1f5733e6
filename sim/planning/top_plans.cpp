#include "sim/planning/top_plans.h"

#include <algorithm>

#include "sim/planning/pieces.h"

namespace spurwright::planning {
namespace {

// The best so far, the worst of them on top, so that most plans are turned away by one comparison.
class List {
public:
    explicit List(std::size_t wanted) : wanted_(wanted) { heap_.reserve(std::min<std::size_t>(wanted, 1024)); }

    // Whether a plan with at most these points and this sum can still enter, whatever its pick.
    bool may_enter(int points, std::int32_t sum) const {
        if (heap_.size() < wanted_) return true;
        const Ranked& worst = heap_.front();
        return points != worst.points ? points > worst.points : sum >= worst.sum;
    }
    void offer(const Ranked& plan) {
        if (heap_.size() == wanted_) {
            if (!better(plan, heap_.front())) return;
            std::pop_heap(heap_.begin(), heap_.end(), better);
            heap_.back() = plan;
        } else {
            heap_.push_back(plan);
        }
        std::push_heap(heap_.begin(), heap_.end(), better);
    }
    std::vector<Ranked> in_order() && {
        std::sort_heap(heap_.begin(), heap_.end(), better);
        return std::move(heap_);
    }

private:
    std::size_t wanted_;
    std::vector<Ranked> heap_;
};

struct Pair {
    std::size_t left, right;
    std::int32_t highest;  // no plan of these canes has a larger sum
};

struct SpurPair {
    SpurWay left, right;
    std::int32_t worth;
    int buds;
    bool hard;
};

class TopSearch {
public:
    TopSearch(const Tables& tables, std::size_t wanted)
        : tables_(tables), list_(wanted), left_(laid_canes(tables, Side::left)),
          right_(laid_canes(tables, Side::right)) {
        check_tables(tables);
        highest_total_ = *std::max_element(tables.totals.begin(), tables.totals.end());
        for (const LaidCane& cane : left_) left_ways_.push_back(spur_ways(tables, Side::left, cane.row));
        for (const LaidCane& cane : right_) right_ways_.push_back(spur_ways(tables, Side::right, cane.row));
    }

    std::vector<Ranked> run() {
        for (const Pair& pair : promising_first()) {
            const bool sucker = left_[pair.left].sucker || right_[pair.right].sucker;
            if (list_.may_enter(sucker ? std::min<int>(pair.highest, tables_.hard_cap) : pair.highest, pair.highest))
                look_at(pair);
        }
        return std::move(list_).in_order();
    }

private:
    static std::int32_t highest_of(const std::vector<SpurWay>& ways) {
        std::int32_t most = ways.front().worth;
        for (const SpurWay& way : ways) most = std::max(most, way.worth);
        return most;
    }

    std::vector<Pair> promising_first() const {
        std::vector<Pair> pairs;
        std::vector<std::int32_t> left, right;
        for (const auto& ways : left_ways_) left.push_back(highest_of(ways));
        for (const auto& ways : right_ways_) right.push_back(highest_of(ways));
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b)
                if (may_stand_together(left_[a], right_[b]))
                    pairs.push_back({a, b,
                                     left_[a].highest + right_[b].highest + left[a] + right[b] + highest_total_ +
                                         tables_.constant + tables_.pair_of(left_[a].row, right_[b].row)});
        std::stable_sort(pairs.begin(), pairs.end(),
                         [](const Pair& one, const Pair& other) { return one.highest > other.highest; });
        return pairs;
    }

    void list_spurs(std::size_t a, std::size_t b) {
        spurs_.clear();
        const bool sucker = left_[a].sucker || right_[b].sucker;
        const bool left_bare = bare_without_spur(tables_, Side::left, left_[a]),
                   right_bare = bare_without_spur(tables_, Side::right, right_[b]);
        for (auto& row : best_) row.fill(nothing);
        for (const SpurWay& x : left_ways_[a]) {
            if (x.row != no_piece && x.row == right_[b].row) continue;
            for (const SpurWay& y : right_ways_[b]) {
                if (y.row != no_piece && y.row == left_[a].row) continue;
                const bool hard = sucker || (left_bare && x.buds == 0) || (right_bare && y.buds == 0);
                spurs_.push_back({x, y, x.worth + y.worth, x.buds + y.buds, hard});
                std::int32_t& best = best_[hard ? 1 : 0][static_cast<std::size_t>(x.buds + y.buds)];
                best = std::max(best, x.worth + y.worth);
            }
        }
    }

    int cap_of_state(int total, bool hard) const {
        int cap = hard ? tables_.hard_cap : no_cap;
        if (total >= tables_.over_from) cap = std::min(cap, tables_.soft_cap);
        return cap;
    }

    void look_at(const Pair& pair) {
        const LaidCane &left = left_[pair.left], &right = right_[pair.right];
        const std::int32_t others = tables_.constant + tables_.pair_of(left.row, right.row);
        list_spurs(pair.left, pair.right);
        for (int i = 0; i < left.cuts; ++i)
            for (int j = 0; j < right.cuts; ++j) {
                const int fruiting = left.first_buds + i + right.first_buds + j;
                std::array<std::int32_t, spur_states> rest;  // all but the spurs, by the buds on them
                bool any = false;
                for (int s = 0; s < spur_states; ++s) {
                    const auto state = static_cast<std::size_t>(s);
                    const std::size_t load = at(fruiting + s < tables_.enough_from ? Load::under : Load::enough);
                    rest[state] = others + left.worth[load][i] + right.worth[load][j] + tables_.totals_of(fruiting, s);
                    for (const bool hard : {false, true}) {
                        const std::int32_t spurs = best_[hard ? 1 : 0][state];
                        if (spurs == nothing) continue;
                        const std::int32_t sum = rest[state] + spurs;
                        any = any || list_.may_enter(std::min<int>(sum, cap_of_state(fruiting + s, hard)), sum);
                    }
                }
                if (any) offer_all(left, right, i, j, fruiting, rest);
            }
    }

    void offer_all(const LaidCane& left, const LaidCane& right, int i, int j, int fruiting,
                   const std::array<std::int32_t, spur_states>& rest) {
        for (const SpurPair& spurs : spurs_) {
            const std::int32_t sum = rest[static_cast<std::size_t>(spurs.buds)] + spurs.worth;
            const int points = std::min<int>(sum, cap_of_state(fruiting + spurs.buds, spurs.hard));
            if (!list_.may_enter(points, sum)) continue;
            list_.offer({{left.row, right.row, static_cast<std::uint16_t>(i), static_cast<std::uint16_t>(j),
                          spurs.left.row, spurs.left.buds, spurs.right.row, spurs.right.buds},
                         points,
                         sum});
        }
    }

    static constexpr std::int32_t nothing = -1'000'000;

    const Tables& tables_;
    List list_;
    std::vector<LaidCane> left_, right_;
    std::vector<std::vector<SpurWay>> left_ways_, right_ways_;
    std::vector<SpurPair> spurs_;                                  // of the pair in hand
    std::array<std::array<std::int32_t, spur_states>, 2> best_{};  // [hard][S], of the pair in hand
    std::int32_t highest_total_ = 0;
};

}  // namespace

std::vector<Ranked> top_picks(const Tables& tables, std::size_t wanted) {
    if (wanted == 0) return {};
    return TopSearch(tables, wanted).run();
}

}  // namespace spurwright::planning
