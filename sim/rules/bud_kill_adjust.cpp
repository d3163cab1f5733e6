#include "sim/rules/bud_kill_adjust.h"

#include "sim/rules/bud_load.h"
#include "sim/rules/piece_points.h"

namespace spurwright::rules {

bool adjusts_for_bud_kill(const HouseRules& house) {
    return house.bud_kill.killed.count > 0 && house.bud_kill.killed >= house.bud_kill.from;
}

PerMille mark_bud_kill_adjust(const LoadFacts& load, const HouseRules& house) {
    return smaller(mark_against_target(load.counted(), load.spacing, house),
                   mark_against_target(load.all, load.spacing, house));
}

Said say_bud_kill_adjust(const LoadFacts& load, const HouseRules& house) {
    const PerMille mark = mark_bud_kill_adjust(load, house);
    const int target = target_buds(house, load.spacing), usual = usual_target_buds(house, load.spacing);
    const bool few = load.counted() < target;
    Said said;
    said.measured = (few ? load.counted() : load.all) * 1000;
    said.unit = Unit::count;
    said.full = Wanted{std::int64_t{target} * (1000 - house.bud_load.full_off.count),
                       std::int64_t{target} * (1000 + house.bud_load.full_off.count)};
    said.half = Wanted{std::int64_t{target} * (1000 - house.bud_load.half_off.count),
                       std::int64_t{target} * (1000 + house.bud_load.half_off.count)};
    said.key = TextKey{mark == full_mark ? "rule.bud-kill-adjust.full"
                       : few             ? "rule.bud-kill-adjust.few"
                                         : "rule.bud-kill-adjust.many"};
    said.arguments = {{"n", Count{few ? load.counted() : load.all}},
                      {"target", Count{target}},
                      {"usual", Count{usual}},
                      {"killed", house.bud_kill.killed}};
    said.if_lost = few ? Mend::next_winter : Mend::now;
    return said;
}

const Rule bud_kill_adjust{RuleName::bud_kill_adjust,
                           {"rule.bud-kill-adjust.asks"},
                           Group::bud_load,
                           Step::lengths,
                           Per::vine,
                           Status::choice,
                           bud_kill_adjust_claims,
                           {""}};

}  // namespace spurwright::rules
