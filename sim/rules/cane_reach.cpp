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
    struct Case {
        bool holds;
        std::string_view beside_a_neighbour, alone;
    };
    const Case cases[] = {
        {overlap, "rule.cane-reach.overlap", "rule.cane-reach.past-room"},
        {cane.free_wire < asks.full.low, "rule.cane-reach.close", "rule.cane-reach.close-room"},
        {!gap, "rule.cane-reach.full", "rule.cane-reach.full-room"},
        {!short_load, "rule.cane-reach.gap-enough", "rule.cane-reach.gap-enough-room"},
        {!cane.more_ripe_wood, "rule.cane-reach.gap-no-wood", "rule.cane-reach.gap-no-wood-room"},
        {true, "rule.cane-reach.gap", "rule.cane-reach.gap-room"},
    };
    const Case* now = cases;
    while (!now->holds) ++now;
    Said said =
        measured_in(Unit::mm, cane.free_wire, asks.full, asks.half, cane.room ? now->alone : now->beside_a_neighbour,
                    {{"part", cane.axis},
                     {"side", side_key(cane.side)},
                     {"measured", overlap ? -cane.free_wire : cane.free_wire},
                     {"low", asks.full.low},
                     {"high", asks.full.high},
                     {"reach", cane.reach}});
    if (cane.room) said.arguments.push_back({"room", *cane.room});
    said.if_lost = gap ? Mend::next_winter : Mend::now;
    return said;
}

const Rule cane_reach{
    RuleName::cane_reach, {"rule.cane-reach.asks"},   Group::bud_load, Step::lengths, Per::cane, Status::choice,
    cane_reach_claims,    {"rule.cane-reach.missing"}};

} // namespace spurwright::rules
