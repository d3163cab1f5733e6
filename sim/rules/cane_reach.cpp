#include "sim/rules/cane_reach.h"

namespace spurwright::rules {

namespace {

PerMille mark_at(Length free_wire, const HouseRules& house, bool gap_is_a_fault) {
    const Band<Length>& asks = house.cane_reach.free_wire;
    if (free_wire.count < 0) return no_mark;
    if (free_wire > asks.full.high && !gap_is_a_fault) return full_mark;
    return mark_in(asks, free_wire);
}

}  // namespace

PerMille mark_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load) {
    const bool gap_is_a_fault = short_load && cane.more_ripe_wood;
    const PerMille mark = mark_at(cane.free_wire, house, gap_is_a_fault);
    return cane.usual_free_wire ? smaller(mark, mark_at(*cane.usual_free_wire, house, gap_is_a_fault)) : mark;
}

Said say_cane_reach(const CaneFacts& cane, const HouseRules& house, bool short_load) {
    const Band<Length>& asks = house.cane_reach.free_wire;
    // The wire that cost: as it is cut, or as it would be with the usual end.
    const PerMille mark = mark_cane_reach(cane, house, short_load);
    const bool as_cut = mark_at(cane.free_wire, house, short_load && cane.more_ripe_wood) == mark;
    const Length free_wire = as_cut ? cane.free_wire : *cane.usual_free_wire;
    const bool overlap = free_wire.count < 0;
    const bool gap = free_wire > asks.full.high;
    struct Case {
        bool holds;
        std::string_view beside_a_neighbour, alone;
    };
    const Case cases[] = {
        {!as_cut && overlap, "rule.cane-reach.usual-past", "rule.cane-reach.usual-past"},
        {!as_cut && !gap, "rule.cane-reach.usual-close", "rule.cane-reach.usual-close"},
        {!as_cut, "rule.cane-reach.usual-gap", "rule.cane-reach.usual-gap"},
        {overlap, "rule.cane-reach.overlap", "rule.cane-reach.past-room"},
        {free_wire < asks.full.low, "rule.cane-reach.close", "rule.cane-reach.close-room"},
        {!gap, "rule.cane-reach.full", "rule.cane-reach.full-room"},
        {!short_load, "rule.cane-reach.gap-enough", "rule.cane-reach.gap-enough-room"},
        {!cane.more_ripe_wood, "rule.cane-reach.gap-no-wood", "rule.cane-reach.gap-no-wood-room"},
        {true, "rule.cane-reach.gap", "rule.cane-reach.gap-room"},
    };
    const Case* now = cases;
    while (!now->holds) ++now;
    Said said = measured_in(Unit::mm, free_wire, asks.full, asks.half, cane.room ? now->alone : now->beside_a_neighbour,
                            {{"part", cane.axis},
                             {"side", side_key(cane.side)},
                             {"measured", overlap ? -free_wire : free_wire},
                             {"low", asks.full.low},
                             {"high", asks.full.high},
                             {"reach", cane.reach}});
    if (cane.room) said.arguments.push_back({"room", *cane.room});
    // A cane is no shorter than its fewest buds: what starts too far out still overlaps then.
    // Its outer joints are shorter than its mean one, by a fifth (our choice).
    const std::int64_t spare = std::int64_t{cane.mean_joint.count} * (cane.count_buds - house.cane_count.floor_buds) * 4 / 5;
    said.if_lost = gap || spare < -free_wire.count ? Mend::next_winter : Mend::now;
    return said;
}

const Rule cane_reach{
    RuleName::cane_reach, {"rule.cane-reach.asks"},   Group::bud_load, Step::lengths, Per::cane, Status::choice,
    cane_reach_claims,    {"rule.cane-reach.missing"}};

}  // namespace spurwright::rules
