#include "sim/planning/brute_force.h"

namespace spurwright::planning {

std::optional<Ranked> best_by_force(const Tables& tables) {
    std::optional<Ranked> best;
    for_each_pick(tables, [&](const Pick& pick) {
        const Ranked now{pick, points_of(tables, pick), sum_of(tables, pick)};
        if (!best || better(now, *best)) best = now;
    });
    return best;
}

Tally tally_by_force(const Tables& tables, int points) {
    Tally tally;
    for_each_pick(tables, [&](const Pick& pick) {
        const int now = points_of(tables, pick);
        ++tally.counted;
        tally.better += now > points;
        tally.equal += now == points;
    });
    return tally;
}

}  // namespace spurwright::planning
