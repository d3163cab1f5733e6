#include "sim/planning/cordon_top.h"

#include <algorithm>
#include <memory>
#include <queue>

namespace spurwright::planning {
namespace {

// A row from some spur on, that spur first.
struct RowTail {
    std::int32_t worth = 0;
    std::vector<RowPick> spurs;
};
bool tail_above(const RowTail& one, const RowTail& other) {
    return one.worth != other.worth ? one.worth > other.worth : one.spurs < other.spurs;
}

// The rows of one arm that hold so many buds, the best first, one after another as they are asked for.
class RowLister {
public:
    explicit RowLister(const CordonTables::Arm& arm) : arm_(arm), first_(arm.canes.size()), spurs_(static_cast<std::size_t>(arm.asked)) {
        std::size_t longest = 0;
        for (const CordonTables::Cane& cane : arm.canes) longest = std::max(longest, cane.worth.size());
        buds_ = longest * spurs_ + 1;
        lists_.resize((first_ + 1) * (spurs_ + 1) * buds_);
    }

    std::size_t buds() const { return buds_; }  // numbers of buds from 0 to one less
    // Null where there are fewer.
    const RowTail* row(std::size_t buds, std::size_t nth) { return at({first_, spurs_, buds}, nth); }

private:
    // Rows that begin with this cane (`first_`: with any) and hold at most so many spurs besides it and so many buds in all.
    struct State {
        std::size_t cane, spurs, buds;
    };
    // Where the next tail of one kind comes from: so many buds on the cane, then the nth row from the next one on.
    struct Branch {
        RowTail tail;
        std::size_t own = 0;
        State next{};
        std::size_t nth = 0;
        bool ends = false;
    };
    struct Worse {
        bool operator()(const Branch& one, const Branch& other) const { return tail_above(other.tail, one.tail); }
    };
    struct List {
        std::vector<std::unique_ptr<RowTail>> found;  // what was answered stays where it is
        std::priority_queue<Branch, std::vector<Branch>, Worse> open;
    };

    const RowTail* at(const State& state, std::size_t nth) {
        auto& list = lists_[(state.cane * (spurs_ + 1) + state.spurs) * buds_ + state.buds];
        if (!list) {
            list = std::make_unique<List>();
            begin(*list, state);
        }
        while (list->found.size() <= nth && !list->open.empty()) {
            Branch branch = list->open.top();
            list->open.pop();
            list->found.push_back(std::make_unique<RowTail>(branch.tail));
            if (!branch.ends) push(*list, state, branch.own, branch.next, branch.nth + 1);
        }
        return nth < list->found.size() ? list->found[nth].get() : nullptr;
    }

    void begin(List& list, const State& state) {
        if (state.cane == first_) {  // the head: nothing kept, or a first spur
            if (state.buds == 0) list.open.push({{}, 0, {}, 0, true});
            if (state.spurs > 0) begin_on(list, state, 0, 0, state.spurs - 1, state.buds);
            return;
        }
        const auto& worth = arm_.canes[state.cane].worth;
        for (std::size_t own = 1; own <= std::min(worth.size(), state.buds); ++own) {
            if (own == state.buds)
                list.open.push({{worth[own - 1], {pick(state.cane, own)}}, own, {}, 0, true});
            else if (state.spurs > 0)
                begin_on(list, state, own, state.cane + 1, state.spurs - 1, state.buds - own);
        }
    }

    void begin_on(List& list, const State& state, std::size_t own, std::size_t from, std::size_t spurs, std::size_t buds) {
        for (std::size_t next = from; next < arm_.canes.size(); ++next) push(list, state, own, {next, spurs, buds}, 0);
    }

    void push(List& list, const State& state, std::size_t own, const State& next, std::size_t nth) {
        const RowTail* beyond = at(next, nth);
        if (!beyond) return;
        Branch branch{{beyond->worth + arm_.place_of(next.cane, state.cane), {}}, own, next, nth, false};
        if (own > 0) {
            branch.tail.worth += arm_.canes[state.cane].worth[own - 1];
            branch.tail.spurs.push_back(pick(state.cane, own));
        }
        branch.tail.spurs.insert(branch.tail.spurs.end(), beyond->spurs.begin(), beyond->spurs.end());
        list.open.push(std::move(branch));
    }

    static RowPick pick(std::size_t cane, std::size_t buds) { return {static_cast<std::uint16_t>(cane), static_cast<std::uint16_t>(buds)}; }

    const CordonTables::Arm& arm_;
    std::size_t first_, spurs_, buds_ = 1;
    std::vector<std::unique_ptr<List>> lists_;
};

// One row of either arm.
struct Meeting {
    CordonRanked ranked;
    std::array<std::size_t, 2> buds{}, nth{};
};
struct RanksBelow {
    bool operator()(const Meeting& one, const Meeting& other) const { return ranks_above(other.ranked, one.ranked); }
};

}  // namespace

std::vector<CordonRanked> top_picks(const CordonTables& tables, std::size_t wanted) {
    std::array<RowLister, 2> arms{RowLister(tables.arms[0]), RowLister(tables.arms[1])};
    std::priority_queue<Meeting, std::vector<Meeting>, RanksBelow> open;
    const auto meet = [&](const std::array<std::size_t, 2>& buds, const std::array<std::size_t, 2>& nth) {
        const RowTail *near = arms[0].row(buds[0], nth[0]), *far = near ? arms[1].row(buds[1], nth[1]) : nullptr;
        if (!far) return;
        const std::int32_t sum = tables.constant + near->worth + far->worth + tables.totals[buds[0] + buds[1]];
        const int points = held_points(tables, sum, static_cast<int>(buds[0] + buds[1]), {near->spurs.empty(), far->spurs.empty()});
        open.push({{{{near->spurs, far->spurs}}, points, sum}, buds, nth});
    };
    for (std::size_t near = 0; near < arms[0].buds(); ++near)
        for (std::size_t far = 0; far < arms[1].buds(); ++far) meet({near, far}, {0, 0});
    std::vector<CordonRanked> found;
    while (found.size() < wanted && !open.empty()) {
        const Meeting best = open.top();
        open.pop();
        found.push_back(best.ranked);
        meet(best.buds, {best.nth[0], best.nth[1] + 1});
        if (best.nth[1] == 0) meet(best.buds, {best.nth[0] + 1, 0});  // else met from the row before
    }
    return found;
}

}  // namespace spurwright::planning
