#include "sim/rules/cane_reach.h"

namespace spurwright::rules {

PerMille mark_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load) {
    const Band<Length>& asks = house.cane_reach.free_wire;
    if (cane.free_wire.count < 0) return no_mark;
    if (cane.free_wire > asks.full.high && !(short_load && cane.more_ripe_wood)) return full_mark;
    return mark_in(asks, cane.free_wire);
}

Said say_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load) {
    const Band<Length>& asks = house.cane_reach.free_wire;
    const bool overlap = cane.free_wire.count < 0;
    const bool gap = cane.free_wire > asks.full.high;
    const bool fault = gap && short_load && cane.more_ripe_wood;
    const std::string_view key = overlap                          ? "rule.cane-reach.overlap"
                                 : cane.free_wire < asks.full.low ? "rule.cane-reach.close"
                                 : fault                          ? "rule.cane-reach.gap"
                                 : gap                            ? "rule.cane-reach.gap-right"
                                                                  : "rule.cane-reach.full";
    Said said = measured_in(Unit::mm, cane.free_wire, asks.full, asks.half, key,
                            {{"part", cane.axis}, {"side", side_key(cane.side)}, {"measured", overlap ? -cane.free_wire : cane.free_wire},
                             {"low", asks.full.low}, {"high", asks.full.high}, {"reach", cane.reach}});
    said.if_lost = gap ? Mend::next_winter : Mend::now;
    return said;
}

const Rule cane_reach{RuleName::cane_reach, {"rule.cane-reach.asks"}, Group::bud_load, Step::lengths, Per::cane, Status::choice,
                      cane_reach_claims, {"rule.cane-reach.missing"}};

}  // namespace spurwright::rules
