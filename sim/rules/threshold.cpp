#include "sim/rules/threshold.h"

#include "sim/rules/say.h"

namespace spurwright::rules {
namespace {

template <class M>
Threshold in_band(Unit unit, const Band<M>& band) {
    return {unit, wanted(band.full), wanted(band.half)};
}
template <class M>
Threshold up_to(Unit unit, M full, M half) {
    return {unit, wanted(at_most(full)), wanted(at_most(half))};
}
template <class M>
Threshold from(Unit unit, M full, M half) {
    return {unit, wanted(at_least(full)), wanted(at_least(half))};
}
Threshold number(std::int64_t full, std::int64_t half) {
    return {Unit::count, Wanted{0, full * 1000}, Wanted{0, half * 1000}};
}
Threshold exactly(std::int64_t n, std::int64_t off) {
    return {Unit::count, Wanted{n * 1000, n * 1000}, Wanted{(n - off) * 1000, (n + off) * 1000}};
}

Threshold load(const HouseRules::BudLoad& house) {
    if (!house.target) return in_band(Unit::per_m, house.density);
    const auto around = [&](PerMille off) {
        return Wanted{std::int64_t{*house.target} * (1000 - off.count), std::int64_t{*house.target} * (1000 + off.count)};
    };
    return {Unit::count, around(house.full_off), around(house.half_off)};
}

}  // namespace

Threshold threshold_of(RuleName name, const HouseRules& h) {
    using enum RuleName;
    switch (name) {
    case cane_diameter: return in_band(Unit::mm, h.cane_diameter.band);
    case cane_end_diameter: return from(Unit::mm, h.cane_end_diameter.full_from, h.cane_end_diameter.half_from);
    case internode_length: return in_band(Unit::mm, h.internode_length);
    case internode_evenness:
        return up_to(Unit::ratio, h.internode_evenness.full_to, h.internode_evenness.half_to);
    case origin_distance: return up_to(Unit::mm, h.origin_distance.full_to, h.origin_distance.half_to);
    case origin_height: return in_band(Unit::mm, h.origin_height.band);
    case cane_side: return up_to(Unit::deg, h.cane_side.full_to, h.cane_side.half_to);
    case wood_age: return {Unit::years, Wanted{1000, 1000}, std::nullopt};
    case cane_health: return from(Unit::share, whole, h.cane_health.ripe_share);
    case bud_load: return load(h.bud_load);
    case cane_reach: return in_band(Unit::mm, h.cane_reach.free_wire);
    case cane_count: return {Unit::count, exactly(h.cane_count.wanted, 0).full, std::nullopt};
    case spur_count: return exactly(h.spur_count.wanted, 1);
    case spur_buds: return {Unit::count, wanted(h.spur_buds.full, 1000), wanted(h.spur_buds.half, 1000)};
    case spur_place: return {Unit::mm, wanted(h.spur_place.below), Wanted{0, std::nullopt}};
    case spur_size: return from(Unit::mm, h.spur_size.full_from, h.spur_size.half_from);
    case spur_direction: return up_to(Unit::deg, h.spur_direction.full_to, h.spur_direction.full_to);
    case end_cut: return from(Unit::mm, h.end_cut.full_from, h.end_cut.half_from);
    case old_wood_stub: return in_band(Unit::ratio, h.old_wood_stub.band);
    case wound_size: return up_to(Unit::mm, h.wound_size.half_from, h.wound_size.none_from);
    case tool_choice: return {Unit::count, number(0, 0).full, std::nullopt};
    case wood_left_behind: return number(0, 1);
    case suckers: return {Unit::count, number(0, 0).full, std::nullopt};
    case tying: return {Unit::count, wanted(h.tying.wraps, 500), std::nullopt};
    case kicker_kept: return {Unit::count, exactly(h.standing.kickers, 0).full, std::nullopt};
    case kicker_absent: return number(0, 1);
    case bud_kill_adjust: return up_to(Unit::share, h.bud_load.full_off, h.bud_load.half_off);
    case prunings_weighed: return up_to(Unit::share, h.prunings_weighed.full_off, h.prunings_weighed.half_off);
    }
    return {};
}

}  // namespace spurwright::rules
