#include "sim/rules/cane_end_diameter.h"

namespace spurwright::rules {

PerMille mark_cane_end_diameter(const CaneFacts& cane, const HouseRules& house) {
    return mark_from(house.cane_end_diameter.full_from, house.cane_end_diameter.half_from, cane.end_diameter);
}

Said say_cane_end_diameter(const CaneFacts& cane, const HouseRules& house) {
    const auto& asks = house.cane_end_diameter;
    const std::string_view key = cane.end_diameter >= asks.full_from   ? "rule.cane-end-diameter.full"
                                 : cane.end_diameter >= asks.half_from ? "rule.cane-end-diameter.thinnish"
                                                                       : "rule.cane-end-diameter.thin";
    Said said = measured_in(
        Unit::mm, cane.end_diameter, at_least(asks.full_from), at_least(asks.half_from), key,
        {{"part", cane.axis}, {"measured", cane.end_diameter}, {"low", asks.full_from}, {"least", asks.half_from}});
    // Shortening needs a bud to spare.
    said.if_lost = cane.count_buds > house.cane_count.floor_buds ? Mend::now : Mend::next_winter;
    return said;
}

const Rule cane_end_diameter{RuleName::cane_end_diameter,
                             {"rule.cane-end-diameter.asks"},
                             Group::cane_choice,
                             Step::lengths,
                             Per::cane,
                             Status::choice,
                             {},
                             {"rule.cane-end-diameter.missing"}};

}  // namespace spurwright::rules
