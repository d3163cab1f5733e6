#include "sim/planning/top_plans.h"

#include <algorithm>

#include "sim/planning/pieces.h"

namespace spurwright::planning {
namespace {

// The best so far, the worst of them on top, so that most plans are turned away by one comparison.
class List {
public:
    explicit List(std::size_t wanted) : wanted_(wanted) { heap_.reserve(std::min<std::size_t>(wanted, 1024)); }

    // Whether a plan that is at best this one can still enter.
    bool may_enter(const Ranked& at_best) const { return heap_.size() < wanted_ || better(at_best, heap_.front()); }
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
        for (const LaidCane& cane : left_) left_sites_.push_back(sites_beside(tables, Side::left, cane.row));
        for (const LaidCane& cane : right_) right_sites_.push_back(sites_beside(tables, Side::right, cane.row));
    }

    std::vector<Ranked> run() {
        for (const Pair& pair : promising_first()) {
            const LaidCane &left = left_[pair.left], &right = right_[pair.right];
            const int cap = left.sucker || right.sucker ? tables_.hard_cap : no_cap;
            if (list_.may_enter({lowest_pick(left, right, 0, 0), std::min<int>(pair.highest, cap), pair.highest}))
                look_at(pair);
        }
        return std::move(list_).in_order();
    }

private:
    static Pick lowest_pick(const LaidCane& left, const LaidCane& right, int i, int j) {
        return {left.row, right.row, static_cast<std::uint16_t>(i), static_cast<std::uint16_t>(j), 0, 0, 0, 0};
    }

    std::vector<Pair> promising_first() const {
        std::vector<Pair> pairs;
        for (std::size_t a = 0; a < left_.size(); ++a)
            for (std::size_t b = 0; b < right_.size(); ++b)
                if (may_stand_together(tables_, left_[a], right_[b]))
                    pairs.push_back({a, b,
                                     left_[a].highest + right_[b].highest + left_sites_[a].highest +
                                         right_sites_[b].highest + highest_total_ + tables_.constant +
                                         tables_.pair_of(left_[a].row, right_[b].row)});
        std::stable_sort(pairs.begin(), pairs.end(),
                         [](const Pair& one, const Pair& other) { return one.highest > other.highest; });
        return pairs;
    }

    bool is_hard(const LaidCane& left, const LaidCane& right, std::size_t left_buds, std::size_t right_buds) const {
        return left.sucker || right.sucker || (left_buds == 0 && bare_without_spur(tables_, Side::left, left)) ||
               (right_buds == 0 && bare_without_spur(tables_, Side::right, right));
    }

    // The best worth of both spurs, by the buds they hold.
    void find_best_spurs(const Pair& pair) {
        const LaidCane &left = left_[pair.left], &right = right_[pair.right];
        for (auto& row : best_) row.fill(no_site);
        for (std::size_t l = 0; l <= most_spur_buds; ++l)
            for (std::size_t m = 0; m <= most_spur_buds; ++m) {
                const std::int32_t x = left_sites_[pair.left].worth(l, right.row),
                                   y = right_sites_[pair.right].worth(m, left.row);
                if (x == no_site || y == no_site || !may_both_be_kept(tables_, l, m)) continue;
                std::int32_t& best = best_[is_hard(left, right, l, m) ? 1 : 0][l + m];
                best = std::max(best, x + y);
            }
    }

    void list_spurs(const Pair& pair) {
        const LaidCane &left = left_[pair.left], &right = right_[pair.right];
        spurs_.clear();
        const auto right_ways = spur_ways(tables_, Side::right, right.row);
        for (const SpurWay& x : spur_ways(tables_, Side::left, left.row)) {
            if (x.row != no_piece && x.row == right.row) continue;
            for (const SpurWay& y : right_ways)
                if ((y.row == no_piece || y.row != left.row) && may_both_be_kept(tables_, x.buds, y.buds))
                    spurs_.push_back({x, y, x.worth + y.worth, x.buds + y.buds, is_hard(left, right, x.buds, y.buds)});
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
        find_best_spurs(pair);
        bool listed = false;
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
                        if (spurs == no_site) continue;
                        const std::int32_t sum = rest[state] + spurs;
                        any = any || list_.may_enter({lowest_pick(left, right, i, j),
                                                      std::min<int>(sum, cap_of_state(fruiting + s, hard)), sum});
                    }
                }
                if (!any) continue;
                if (!listed) list_spurs(pair);
                listed = true;
                offer_all(left, right, i, j, fruiting, rest);
            }
    }

    void offer_all(const LaidCane& left, const LaidCane& right, int i, int j, int fruiting,
                   const std::array<std::int32_t, spur_states>& rest) {
        Ranked plan{lowest_pick(left, right, i, j), 0, 0};
        for (const SpurPair& spurs : spurs_) {
            plan.sum = rest[static_cast<std::size_t>(spurs.buds)] + spurs.worth;
            plan.points = std::min<int>(plan.sum, cap_of_state(fruiting + spurs.buds, spurs.hard));
            plan.pick.left_spur = spurs.left.row;
            plan.pick.left_buds = spurs.left.buds;
            plan.pick.right_spur = spurs.right.row;
            plan.pick.right_buds = spurs.right.buds;
            list_.offer(plan);
        }
    }

    const Tables& tables_;
    List list_;
    std::vector<LaidCane> left_, right_;
    std::vector<Sites> left_sites_, right_sites_;
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
