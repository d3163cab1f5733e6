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

Weights weights_of(const Rule& rule, const HouseRules& house, bool single) {
    if (!house.of(rule.name).on) return {};
    const std::int64_t weight = house.of(rule.name).weight;
    const std::int64_t canes = single ? 1 : house.cane_count.wanted, spurs = single ? 1 : house.spur_count.wanted;
    switch (rule.per) {
    case Per::cane: return {2 * weight / canes, 0, 0};
    case Per::spur: return {0, 2 * weight / spurs, 0};
    case Per::cane_and_spur:
        return {2 * house.end_cut.weight_canes / canes, 2 * house.end_cut.weight_spurs / spurs, 0};
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

// An acceptable cane, and an acceptable spur other than it: of two acceptable canes one is always another.
bool spur_beside_cane(const SideOffers& here) {
    if (here.canes.size() > 1) return !here.spurs.empty();
    return !here.canes.empty() &&
           std::any_of(here.spurs.begin(), here.spurs.end(), [&](AxisId spur) { return spur != here.canes[0]; });
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

// Of a cordon: the weight of its spurs is that of two, shared out among all that are asked.
Asked asked_of_row(const Offers& offers, const HouseRules& house) {
    Asked asks;
    asks.cordon = true;
    asks.suckers = offers.suckers;
    asks.old_wood = offers.old_wood;
    asks.row = offers.row_asked;
    for (std::size_t side = 0; side < 2; ++side) asks.spur[side] = asks.row[side] > 0;
    const std::int64_t spurs = asks.spurs();
    std::array<std::int64_t, rule_count> all_spurs{}, once{};
    std::int64_t sum = 0, left = 1000;
    for (const Rule* rule : all_rules) {
        const std::size_t i = index_of(rule->name);
        all_spurs[i] = spurs ? weights_of(*rule, house, true).spur : 0;
        once[i] = is_asked(rule->name, asks, house) ? weights_of(*rule, house, true).vine : 0;
        sum += all_spurs[i] + once[i];
    }
    if (sum == 0) return asks;
    for (std::size_t i = 0; i < rule_count && spurs > 0; ++i) {
        asks.per_spur[i] = {static_cast<std::int32_t>((2 * all_spurs[i] * 1000 + sum * spurs) / (2 * sum * spurs))};
        left -= spurs * asks.per_spur[i].count;
    }
    share_out(left, once, asks.once);
    return asks;
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
    found.system = before.system;
    if (before.system == System::cordon) {
        found.row = cordon_row(before, house);
        for (std::size_t side = 0; side < 2; ++side) {
            found.row_asked[side] = spurs_asked(found.row[side], house, before.spacing);
            for (const RowCane& cane : found.row[side])
                if (cane.good) found.sides[side].spurs.push_back(cane.axis);
        }
    }
    const bool either_way = before.system == System::one_cane;  // its one cane may go to either side
    for (const Axis& axis : before.axes) {
        if (axis.removed || is_trunk(axis)) continue;
        if (age(before, axis) == 2) found.old_wood = true;
        if (axis.state != AxisState::live || !is_cane(before, axis)) continue;
        if (is_sucker(before, axis, habits)) {
            found.suckers = true;
            continue;
        }
        if (before.system == System::cordon) continue;
        const std::vector<std::uint32_t> buds = ripe_count_nodes(before, axis, habits);
        SideOffers& side = found.sides[index_of(axis.side)];
        if (buds.size() >= static_cast<std::size_t>(house.cane_count.floor_buds)) {
            const std::uint32_t last = buds[static_cast<std::size_t>(house.cane_count.floor_buds) - 1];
            CaneFacts cane = measure_wood(before, house, axis, canonical_end(before, axis, last));
            cane.mean_joint = mean_internode(before, axis, habits);
            const bool own_way_breaks = would_break(before, axis, axis.side);
            const bool breaks = own_way_breaks && !(either_way && !would_break(before, axis, other(axis.side)));
            if (acceptable_cane(cane, house) && !breaks) {
                side.canes.push_back(axis.id);
                cane.off_row = base_azimuth(before, axis, own_way_breaks ? other(axis.side) : axis.side);
                side.shortest.push_back(cane);
            }
        }
        if (!buds.empty() &&
            acceptable_spur(measure_spur(before, house, axis, canonical_end(before, axis, buds[0])), house)) {
            side.spurs.push_back(axis.id);
            side.two_buds.push_back(measure_spur(before, house, axis, 2));
        }
    }
    if (house.standing.kickers + house.standing.spares > 0 && before.system != System::cordon) found.standing = may_stand(before, house);
    return found;
}

Asked asked(const Offers& offers, const HouseRules& house) {
    if (offers.system == System::cordon) return asked_of_row(offers, house);
    Asked asks;
    asks.suckers = offers.suckers;
    asks.old_wood = offers.old_wood;
    asks.single = offers.system == System::one_cane;
    // Two canes and two spurs may take four of them, one of each two.
    const auto wanted = static_cast<std::size_t>(house.standing.kickers + house.standing.spares);
    const bool enough = offers.standing.size() >= wanted + (asks.single ? 2 : 4);
    asks.kickers = house.standing.kickers > 0 && enough;
    asks.spares = house.standing.spares > 0 && enough;
    if (asks.single) {
        SideOffers both = offers.sides[0];
        both.canes.insert(both.canes.end(), offers.sides[1].canes.begin(), offers.sides[1].canes.end());
        both.spurs.insert(both.spurs.end(), offers.sides[1].spurs.begin(), offers.sides[1].spurs.end());
        asks.cane[0] = asks.cane[1] = !both.canes.empty();
        asks.spur[0] = asks.spur[1] = spur_beside_cane(both);
    } else {
        for (std::size_t side = 0; side < 2; ++side) {
            asks.cane[side] = !offers.sides[side].canes.empty();
            asks.spur[side] = spur_beside_cane(offers.sides[side]);
        }
    }
    const std::int64_t canes = asks.canes(), spurs = asks.spurs();
    std::array<std::int64_t, rule_count> once{};
    std::int64_t sum = 0;
    for (const Rule* rule : all_rules) {
        const Weights w = weights_of(*rule, house, asks.single);
        once[index_of(rule->name)] = is_asked(rule->name, asks, house) ? w.vine : 0;
        sum += canes * w.cane + spurs * w.spur + once[index_of(rule->name)];
    }
    if (sum == 0) return asks;
    std::int64_t left = 1000;
    const auto scaled = [&](std::int64_t weight) {
        return Tenths{static_cast<std::int32_t>((2 * weight * 1000 + sum) / (2 * sum))};
    };
    for (const Rule* rule : all_rules) {
        const Weights w = weights_of(*rule, house, asks.single);
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
    for (std::size_t i = 0; i < rule_count; ++i)
        sum += Tenths{canes() * per_cane[i].count + spurs() * per_spur[i].count + once[i].count};
    return sum;
}

}  // namespace spurwright::rules
