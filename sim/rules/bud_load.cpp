#include "sim/rules/bud_load.h"

#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/piece_points.h"

namespace spurwright::rules {
namespace {

using Buds = Measure<struct thousandths_of_a_bud>;

Buds buds(int n) { return {n * 1000}; }

Band<Buds> around(int target, const HouseRules::BudLoad& house) {
    const auto at = [&](std::int32_t per_mille) { return Buds{target * per_mille}; };
    return {{at(1000 - house.full_off.count), at(1000 + house.full_off.count)},
            {at(1000 - house.half_off.count), at(1000 + house.half_off.count)}};
}

// Thousandths of a bud a metre, rounded down.
BudsPerMetre density(int n, Length spacing) {
    return {static_cast<std::int32_t>(std::int64_t{n} * 1'000'000'000 / spacing.count)};
}

// The density is a mark only beside the target that follows from the space.
PerMille by_space(int n, const LoadFacts& load, const HouseRules& house) {
    return house.bud_load.target || adjusts_for_bud_kill(house) ? full_mark : mark_in(house.bud_load.density, density(n, load.spacing));
}

PerMille by_target(int n, const LoadFacts& load, const HouseRules& house) {
    return mark_against_target(n, load.spacing, house);
}

PerMille mark_of(int n, const LoadFacts& load, const HouseRules& house) {
    return smaller(by_target(n, load, house), by_space(n, load, house));
}

}  // namespace

int usual_target_buds(const HouseRules& house, Length spacing) {
    if (house.bud_load.target) return *house.bud_load.target;
    return static_cast<int>((std::int64_t{house.bud_load.per_metre} * spacing.count + 500'000) / 1'000'000);
}

int target_buds(const HouseRules& house, Length spacing) {
    const int usual = usual_target_buds(house, spacing);
    if (!adjusts_for_bud_kill(house)) return usual;
    return static_cast<int>((std::int64_t{usual} * (1000 + house.bud_kill.killed.count) + 500) / 1000);
}

PerMille mark_against_target(int n, Length spacing, const HouseRules& house) {
    return mark_in(around(target_buds(house, spacing), house.bud_load), buds(n));
}

bool short_load(int counted_buds, int target, const HouseRules& house) {
    return std::int64_t{counted_buds} * 1000 < std::int64_t{target} * house.cane_reach.short_from.count;
}

bool overloaded(int all_buds, int target, const HouseRules& house) {
    return std::int64_t{all_buds} * 1000 > std::int64_t{target} * house.caps.over_target.count;
}

PerMille mark_bud_load(const LoadFacts& load, const HouseRules& house) {
    return smaller(mark_of(load.counted(), load, house), mark_of(load.all, load, house));
}

PerMille mark_bud_load_cleared(const LoadFacts& load, const HouseRules& house) {
    const Band<Buds> asks = around(target_buds(house, load.spacing), house.bud_load);
    return buds(load.counted()) > asks.full.high ? full_mark : mark_of(load.counted(), load, house);
}

Said say_bud_load(const LoadFacts& load, const HouseRules& house) {
    const int target = target_buds(house, load.spacing);
    const Band<Buds> asks = around(target, house.bud_load);
    const PerMille few = mark_of(load.counted(), load, house);
    const PerMille all = mark_of(load.all, load, house);
    const bool over = buds(load.all) > asks.full.high || (load.all > load.counted() && all < few);
    const int told = over ? load.all : load.counted();
    const PerMille mark = smaller(few, all);
    std::string_view key;
    if (mark == full_mark)
        key = "rule.bud-load.full";
    else if (by_target(told, load, house) == full_mark)  // the space alone says no
        key = density(told, load.spacing) > house.bud_load.density.full.high ? "rule.bud-load.dense"
                                                                             : "rule.bud-load.sparse";
    else if (over)
        key = mark == no_mark ? "rule.bud-load.too-many" : "rule.bud-load.many";
    else if (load.counted() == 0)
        key = "rule.bud-load.nothing";
    else
        key = mark == no_mark ? "rule.bud-load.too-few" : "rule.bud-load.few";
    const auto up = [](Buds b) { return Count{(b.count + 999) / 1000}; };
    const auto down = [](Buds b) { return Count{b.count / 1000}; };
    Said said = measured_in(Unit::count, buds(told), asks.full, asks.half, key,
                            {{"n", Count{told}},
                             {"target", Count{target}},
                             {"low", up(asks.full.low)},
                             {"high", down(asks.full.high)},
                             {"fruiting", Count{load.fruiting}},
                             {"spurs", Count{load.spurs}},
                             {"density", Ratio{density(told, load.spacing).count / 1000.0}}});
    // Shortened, or cleared of what is not wanted; where the pieces kept hold too few, clearing wins nothing.
    const bool kept_too_many = buds(load.counted()) > asks.full.high;
    said.if_lost = over && (kept_too_many || few > all) ? Mend::now : Mend::next_winter;
    return said;
}

const Rule bud_load{RuleName::bud_load, {"rule.bud-load.asks"}, Group::bud_load, Step::lengths,
                    Per::vine,          Status::choice,         bud_load_claims, {""}};

}  // namespace spurwright::rules
