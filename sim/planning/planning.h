// What this vine offers under these house rules: its best plan, the next best ones, and where any number of points
// stands among all choices. Built once for a vine and asked often. Knows no files and no sentences.
#pragma once

#include <optional>

#include "sim/planning/as_good.h"
#include "sim/planning/plan_count.h"
#include "sim/planning/vine_tables.h"
#include "sim/pruning/plan.h"

namespace spurwright::planning {

struct BestPlan {
    Choice choice;
    Plan plan;      // complete(choice)
    Tenths points;  // as judged
    Tenths sum;     // before caps
    bool operator==(const BestPlan&) const = default;
};

class Planning {
public:
    // Keeps its own copies. `vine` is uncut this winter.
    Planning(const Vine& vine, const rules::HouseRules& house);
    // What is still open on `now`, the vine after some acts: choices that need what is gone are none any more. Plans are
    // told whole, from the uncut vine, and worth what they are with careful hands from the start (open_choices.h).
    Planning(const Vine& vine, const rules::HouseRules& house, const Vine& now);

    // Nothing where no cane can be laid: a vine too young or too weak has no plan.
    std::optional<BestPlan> best() const;
    // The best of those that lay this cane to this side; nothing where it cannot lie there.
    std::optional<BestPlan> best_laying(AxisId cane, Side side) const;
    // The best of those that lay these two canes; nothing where one of them cannot lie there.
    std::optional<BestPlan> best_laying_both(AxisId left, AxisId right) const;
    // The best of those that keep this axis as the spur of that side; nothing where it cannot be one.
    std::optional<BestPlan> best_keeping_spur(AxisId spur, Side side) const;
    // The best of those that do not lay the same two canes to the same sides; nothing where there are no others.
    std::optional<BestPlan> best_with_other_canes(const Choice& choice) const;
    // The best first, in their exact order; fewer where there are fewer choices.
    std::vector<BestPlan> top(std::size_t wanted) const;

    // Choices in all, with more points, with as many. Rank of a plan = better + 1.
    Tally count(Tenths points) const;
    std::uint64_t counted() const;
    // Choices with at least so many points: the plans as good as the best within a tolerance.
    std::uint64_t at_least(Tenths points) const;

    // The same, grouped by the canes and spurs they keep; the best groups first.
    AsGood as_good(Tenths points, std::size_t most_groups) const;

    const VineTables& tables() const { return tables_; }
    BestPlan full(const Ranked& ranked) const;

private:
    Vine vine_;
    rules::HouseRules house_;
    VineTables tables_;
};

}  // namespace spurwright::planning
