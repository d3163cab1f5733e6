#include "sim/rules/asked.h"

#include <algorithm>

#include "sim/pruning/lay.h"
#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/rule_list.h"
#include "sim/rules/spur_size.h"

namespace spurwright::rules {
namespace {

// Weights of one piece, and of a rule judged once, in half tenths so that an odd weight shares out evenly.
struct Weights {
    std::int64_t cane = 0, spur = 0, vine = 0;
};

Weights weights_of(const Rule& rule, const HouseRules& house) {
    if (!house.of(rule.name).on) return {};
    const std::int64_t weight = house.of(rule.name).weight;
    switch (rule.per) {
    case Per::cane: return {2 * weight / house.cane_count.wanted, 0, 0};
    case Per::spur: return {0, 2 * weight / house.spur_count.wanted, 0};
    case Per::cane_and_spur:
        return {2 * house.end_cut.weight_canes / house.cane_count.wanted,
                2 * house.end_cut.weight_spurs / house.spur_count.wanted, 0};
    case Per::vine: break;
    }
    return {0, 0, 2 * weight};
}

bool is_asked(RuleName name, const Asked& asked, const HouseRules& house) {
    switch (name) {
    case RuleName::suckers: return asked.suckers;
    case RuleName::old_wood_stub: return asked.old_wood;
    case RuleName::kicker_kept: return asked.kickers;
    case RuleName::kicker_absent: return asked.kickers || asked.spares;
    case RuleName::bud_kill_adjust: return adjusts_for_bud_kill(house);
    case RuleName::prunings_weighed: return house.prunings_weighed.asked;
    default: return true;
    }
}

// The nearest to the head first, so that old wood need not stay for them.
std::vector<AxisId> may_stand(const Vine& before, const HouseRules& house) {
    std::vector<std::pair<Length, AxisId>> found;
    for (const Axis& axis : before.axes) {
        if (axis.removed || axis.state != AxisState::live || !is_cane(before, axis) || is_sucker(before, axis, house.habits()))
            continue;
        if (ripe_count_nodes(before, axis, house.habits()).size() >= static_cast<std::size_t>(house.cane_count.floor_buds))
            found.emplace_back(distance_to_head(before, axis), axis.id);
    }
    std::stable_sort(found.begin(), found.end());
    std::vector<AxisId> axes;
    axes.reserve(found.size());
    for (const auto& [distance, axis] : found) axes.push_back(axis);
    return axes;
}

// `left` tenths among the rules judged once, in proportion to their weights, by largest remainder; ties in table order.
void share_out(std::int64_t left, const std::array<std::int64_t, rule_count>& weights,
               std::array<Tenths, rule_count>& once) {
    std::int64_t sum = 0;
    for (const std::int64_t weight : weights) sum += weight;
    if (sum == 0 || left <= 0) return;
    std::array<std::int64_t, rule_count> remainder{};
    std::int64_t given = 0;
    for (std::size_t i = 0; i < rule_count; ++i) {
        once[i] = {static_cast<std::int32_t>(left * weights[i] / sum)};
        remainder[i] = left * weights[i] % sum;
        given += once[i].count;
    }
    for (; given < left; ++given) {
        const auto most = std::max_element(remainder.begin(), remainder.end());
        ++once[static_cast<std::size_t>(most - remainder.begin())].count;
        *most = -1;
    }
}

}  // namespace

bool acceptable_cane(const CaneFacts& cane, const HouseRules& house) {
    return cane.wood_age == 1 && !cane.sucker && cane.count_buds >= house.cane_count.floor_buds &&
           mark_cane_diameter(cane, house) > no_mark && mark_cane_health(cane, house) > no_mark &&
           mark_origin_distance(cane.distance_to_head, cane.creep, house) > no_mark;
}

bool acceptable_spur(const SpurFacts& spur, const HouseRules& house) {
    return spur.count_buds >= house.spur_count.floor_buds && mark_spur_size(spur, house) > no_mark &&
           spur.below_wire.count > 0 && mark_origin_distance(spur.distance_to_head, spur.creep, house) > no_mark;
}

Offers offers(const Vine& before, const HouseRules& house) {
    const CountingHabits habits = house.habits();
    Offers found;
    for (const Axis& axis : before.axes) {
        if (axis.removed || is_trunk(axis)) continue;
        if (age(before, axis) == 2) found.old_wood = true;
        if (axis.state != AxisState::live || !is_cane(before, axis)) continue;
        if (is_sucker(before, axis, habits)) {
            found.suckers = true;
            continue;
        }
        const std::vector<std::uint32_t> buds = ripe_count_nodes(before, axis, habits);
        SideOffers& side = found.sides[index_of(axis.side)];
        if (buds.size() >= static_cast<std::size_t>(house.cane_count.floor_buds)) {
            const std::uint32_t last = buds[static_cast<std::size_t>(house.cane_count.floor_buds) - 1];
            CaneFacts cane = measure_wood(before, house, axis, canonical_end(before, axis, last));
            cane.mean_joint = mean_internode(before, axis, habits);
            if (acceptable_cane(cane, house) && !would_break(before, axis, axis.side)) side.canes.push_back(axis.id);
        }
        if (!buds.empty() &&
            acceptable_spur(measure_spur(before, house, axis, canonical_end(before, axis, buds[0])), house))
            side.spurs.push_back(axis.id);
    }
    if (house.standing.kickers + house.standing.spares > 0) found.standing = may_stand(before, house);
    return found;
}

Asked asked(const Offers& offers, const HouseRules& house) {
    Asked asks;
    asks.suckers = offers.suckers;
    asks.old_wood = offers.old_wood;
    // Two canes and two spurs may take four of them.
    const auto wanted = static_cast<std::size_t>(house.standing.kickers + house.standing.spares);
    const bool enough = offers.standing.size() >= wanted + 4;
    asks.kickers = house.standing.kickers > 0 && enough;
    asks.spares = house.standing.spares > 0 && enough;
    for (std::size_t side = 0; side < 2; ++side) {
        const SideOffers& here = offers.sides[side];
        asks.cane[side] = !here.canes.empty();
        // Another acceptable spur than the cane: of two acceptable canes one is always another.
        asks.spur[side] =
            asks.cane[side] && (here.canes.size() > 1 ? !here.spurs.empty()
                                                      : std::any_of(here.spurs.begin(), here.spurs.end(),
                                                                    [&](AxisId s) { return s != here.canes[0]; }));
    }
    const std::int64_t canes = asks.cane[0] + asks.cane[1], spurs = asks.spur[0] + asks.spur[1];
    std::array<std::int64_t, rule_count> once{};
    std::int64_t sum = 0;
    for (const Rule* rule : all_rules) {
        const Weights w = weights_of(*rule, house);
        once[index_of(rule->name)] = is_asked(rule->name, asks, house) ? w.vine : 0;
        sum += canes * w.cane + spurs * w.spur + once[index_of(rule->name)];
    }
    if (sum == 0) return asks;
    std::int64_t left = 1000;
    const auto scaled = [&](std::int64_t weight) {
        return Tenths{static_cast<std::int32_t>((2 * weight * 1000 + sum) / (2 * sum))};
    };
    for (const Rule* rule : all_rules) {
        const Weights w = weights_of(*rule, house);
        const std::size_t i = index_of(rule->name);
        if (canes) asks.per_cane[i] = scaled(w.cane);
        if (spurs) asks.per_spur[i] = scaled(w.spur);
        left -= canes * asks.per_cane[i].count + spurs * asks.per_spur[i].count;
    }
    share_out(left, once, asks.once);
    return asks;
}

Asked asked(const Vine& before, const HouseRules& house) { return asked(offers(before, house), house); }

Tenths Asked::total() const {
    Tenths sum;
    const std::int32_t canes = cane[0] + cane[1], spurs = spur[0] + spur[1];
    for (std::size_t i = 0; i < rule_count; ++i)
        sum += Tenths{canes * per_cane[i].count + spurs * per_spur[i].count + once[i].count};
    return sum;
}

}  // namespace spurwright::rules
