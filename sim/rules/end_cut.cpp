#include "sim/rules/end_cut.h"

namespace spurwright::rules {
namespace {

bool past_next_node(const EndCutFacts& end, const HouseRules::EndCut& house) {
    return end.next_node && end.wood_beyond_bud > *end.next_node + house.node_slack;
}

bool through_next_node(const EndCutFacts& end, const HouseRules::EndCut& house) {
    return end.next_node && !past_next_node(end, house) && end.wood_beyond_bud + house.node_slack >= *end.next_node;
}

}  // namespace

PerMille mark_end_cut(const EndCutFacts& end, const HouseRules& house) {
    const auto& asks = house.end_cut;
    if (!end.cut) return end.wood_beyond_bud <= asks.full_from ? full_mark : no_mark;
    if (past_next_node(end, asks)) return no_mark;
    if (through_next_node(end, asks)) return full_mark;
    return mark_from(asks.full_from, asks.half_from, end.wood_beyond_bud);
}

Said say_end_cut(const EndCutFacts& end, AxisId part, const HouseRules& house) {
    const auto& asks = house.end_cut;
    const bool peg = past_next_node(end, asks);
    std::string_view key;
    if (!end.cut)
        key = mark_end_cut(end, house) == full_mark ? "rule.end-cut.uncut-full" : "rule.end-cut.uncut";
    else if (peg)
        key = "rule.end-cut.peg";
    else if (through_next_node(end, asks))
        key = "rule.end-cut.through-node";
    else if (end.wood_beyond_bud >= asks.full_from)
        key = "rule.end-cut.full";
    else
        key = end.wood_beyond_bud >= asks.half_from ? "rule.end-cut.close" : "rule.end-cut.very-close";
    Said said = measured_in(
        Unit::mm, end.wood_beyond_bud, at_least(asks.full_from), at_least(asks.half_from), key,
        {{"part", part}, {"measured", end.wood_beyond_bud}, {"low", asks.full_from}, {"least", asks.half_from}});
    said.if_lost = peg || !end.cut ? Mend::now : Mend::carried;
    return said;
}

const Rule end_cut{RuleName::end_cut,  {"rule.end-cut.asks"}, Group::cuts,    Step::lengths,
                   Per::cane_and_spur, Status::choice,        end_cut_claims, {"rule.end-cut.missing"}};

}  // namespace spurwright::rules
