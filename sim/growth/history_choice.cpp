#include "sim/growth/history_choice.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/traits.h"
#include "sim/pruning/lay.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr int least_buds = 4, dearest = 700, many_buds = 10, first_buds = 12;

bool is_flagged(const Vine& vine, const Axis& axis, const std::vector<std::uint32_t>& ripe) {
    const auto nodes = vine.nodes_of(axis);
    const std::uint32_t last = ripe.empty() ? 1 : ripe[std::min<std::size_t>(ripe.size(), first_buds) - 1];
    for (std::uint32_t i = 0; i < nodes.size() && i <= last; ++i)
        if (nodes[i].harm != Harm::none) return true;
    const bool poorly_ripe = along(vine, axis, nodes.size() - 1) > axis.ripe + Length{1000};
    return poorly_ripe || is_double(vine, axis);
}

Candidate measured(const Vine& vine, const Axis& axis, Side side) {
    const auto ripe = ripe_count_nodes(vine, axis);
    const auto nodes = vine.nodes_of(axis);
    Candidate c;
    c.axis = &axis;
    c.distance_mm = distance_to_head(vine, axis).count / 1000;
    c.azimuth_deg = base_azimuth(vine, axis, side).count / 1000;
    c.below_wire_mm = below_wire(vine, axis).count / 1000;
    c.ripe_buds = static_cast<int>(ripe.size());
    c.thickness_mm = in_mm(thickness(vine, axis));
    if (ripe.size() >= 2) {
        const std::size_t last = std::min<std::size_t>(ripe.size(), first_buds) - 1;
        Length sum;
        for (std::uint32_t i = ripe[0] + 1; i <= ripe[last]; ++i) sum += nodes[i].joint;
        c.joint_mm = in_mm(sum) / (ripe[last] - ripe[0]);
    }
    c.flagged = is_flagged(vine, axis, ripe);
    c.poorly_placed = is_sucker(vine, axis);
    c.whim =
        Draws(vine.seed).between(Trait::pruner_whim, axis.id.value, static_cast<std::uint32_t>(vine.winter), 0, 15);
    return c;
}

int whole(double cost) { return static_cast<int>(std::floor(cost + 0.5)); }

} // namespace

std::vector<Candidate> candidates_of(const Vine& vine, Side side) {
    std::vector<Candidate> found;
    for (const Axis& axis : vine.axes)
        if (!axis.removed && axis.state == AxisState::live && axis.side == side && axis.node_count > 1 &&
            is_cane(vine, axis) && !on_rootstock(vine, axis))
            found.push_back(measured(vine, axis, side));
    return found;
}

std::optional<int> cane_cost(const Candidate& c, const PrunerHabits& habits, std::optional<Length> last_origin) {
    if (c.ripe_buds < least_buds) return std::nullopt;
    const int wanted = habits.wanted_mm + (habits.from_last_origin && last_origin ? last_origin->count / 1000 : 0);
    const int off = c.distance_mm - wanted, above = -habits.above_wire_mm - c.below_wire_mm;
    double cost = 0.1 * (off > 0 ? habits.farther_points : habits.distance_points) * std::abs(off) +
                  40 * std::max(0.0, habits.thin_mm - c.thickness_mm) +
                  40 * std::max(0.0, c.thickness_mm - habits.fat_mm) + 3 * std::max(0.0, 50 - c.joint_mm) +
                  3 * std::max(0.0, c.joint_mm - 95) + 2 * std::max(0, c.azimuth_deg - 50) + c.whim;
    if (c.flagged) cost += 300;
    if (above > 0) cost += 200 + 0.1 * habits.above_points * above;
    if (c.ripe_buds < many_buds) cost += 60;
    const int total = whole(cost);
    return total > dearest ? std::nullopt : std::optional<int>(total);
}

int spur_cost(const Candidate& c, const Candidate* cane) {
    double cost =
        5.0 * c.distance_mm / 10 + 60 * std::max(0.0, 6.4 - c.thickness_mm) + 2 * std::max(0, c.azimuth_deg - 60);
    if (c.below_wire_mm < 0 || (cane && c.below_wire_mm < cane->below_wire_mm - 10)) cost += 200;
    if (c.flagged) cost += 200;
    if (cane && c.distance_mm > cane->distance_mm) cost += 150;
    if (c.ripe_buds < 2) cost += 200;
    return whole(cost);
}

const Axis* best_spur(const Vine& vine, Side side) {
    const Axis* best = nullptr;
    int cheapest = no_spur_cost;
    for (const Candidate& c : candidates_of(vine, side)) {
        if (c.ripe_buds == 0) continue;
        const int cost = spur_cost(c, nullptr);
        if (cost >= cheapest) continue;
        cheapest = cost;
        best = c.axis;
    }
    return best;
}

Chosen choose(const Vine& vine, Side side, const PrunerHabits& habits) {
    const std::vector<Candidate> found = candidates_of(vine, side);
    Chosen best;
    int lowest = -1;
    // Ascending ids and "cheaper only": a tie stays with the lower axis.
    const auto offer = [&](const Candidate* cane, int cost_of_cane) {
        const Candidate* spur = nullptr;
        int cheapest = no_spur_cost;
        if (habits.spurs)
            for (const Candidate& c : found)
                if (&c != cane && c.ripe_buds > 0 && spur_cost(c, cane) < cheapest) {
                    cheapest = spur_cost(c, cane);
                    spur = &c;
                }
        const int cost = cost_of_cane + cheapest;
        if (lowest >= 0 && cost >= lowest) return;
        if (cane && would_break(vine, *cane->axis, side)) return;
        lowest = cost;
        best = {cane ? cane->axis : nullptr, spur ? spur->axis : nullptr};
    };
    for (const Candidate& c : found)
        if (const auto cost = cane_cost(c, habits, vine.origin(side))) offer(&c, *cost);
    if (lowest < 0) offer(nullptr, 0);
    return best;
}

} // namespace spurwright::growth
