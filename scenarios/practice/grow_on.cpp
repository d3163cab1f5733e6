#include "scenarios/practice/grow_on.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

bool lies_to(const Vine& vine, const Laid& laid, AxisId cane, Side side) {
    return laid.axis == cane && laid.side == side && laid.winter == vine.winter && laid.state != LaidState::snapped && !vine.find(cane)->removed;
}

bool lays(const Vine& pruned, AxisId cane, Side side) {
    return std::any_of(pruned.laid.begin(), pruned.laid.end(), [&](const Laid& l) { return lies_to(pruned, l, cane, side); });
}

Starts starts_of(const Vine& pruned) {
    Starts starts;
    for (const Laid& laid : pruned.laid)
        if (lies_to(pruned, laid, laid.axis, laid.side)) starts[laid.side == Side::right ? 1 : 0] = distance_to_head(pruned, *pruned.find(laid.axis));
    return starts;
}

Vine pruned_by(const Vine& vine, const Plan& plan) {
    auto pruned = prune(vine, plan);
    SPURWRIGHT_CHECK(pruned.has_value(), ==, true);  // plans of planning and of the history pruner are legal
    return *std::move(pruned);
}

// The starts of this winter and of as many more, season by season.
std::vector<Starts> lived(Vine pruned, Pruner who, int winters) {
    const growth::PrunerHabits habits = growth::habits_of(who);
    std::vector<Starts> starts{starts_of(pruned)};
    for (int i = 0; i < winters; ++i) {
        const Vine grown = growth::season(pruned, {});
        pruned = pruned_by(grown, growth::history_plan(grown, habits));
        starts.push_back(starts_of(pruned));
    }
    return starts;
}

}  // namespace

GrownOn grow_on(const Vine& start, const Vine& own, const planning::Planning& planning, const GrowOnWish& wish) {
    GrownOn grown;
    grown.side = start.find(wish.near)->side;
    grown.own_near = lays(own, wish.near, grown.side);
    grown.own_far = !grown.own_near && lays(own, wish.far, grown.side);
    const auto begun = [&](AxisId cane, bool by_hand) -> std::optional<Vine> {
        if (by_hand) return own;
        const auto plan = planning.best_laying(cane, grown.side);
        if (!plan) return std::nullopt;
        return pruned_by(start, plan->plan);
    };
    const auto near = begun(wish.near, grown.own_near), far = begun(wish.far, grown.own_far);
    const std::vector<Starts> none(static_cast<std::size_t>(wish.winters) + 1);
    const std::vector<Starts> near_starts = near ? lived(*near, Pruner::good, wish.winters) : none,
                              far_starts = far ? lived(*far, Pruner::far_canes, wish.winters) : none;
    for (std::size_t i = 0; i < near_starts.size(); ++i)
        grown.winters.push_back({start.winter + static_cast<int>(i), near_starts[i], far_starts[i]});
    return grown;
}

}  // namespace spurwright::practice
