#include "sim/rules/origin_height.h"

namespace spurwright::rules {

PerMille mark_origin_height(const CaneFacts& cane, const HouseRules& house) {
    return mark_in(house.origin_height.band, cane.below_wire);
}

Said say_origin_height(const CaneFacts& cane, const HouseRules& house) {
    const auto& asks = house.origin_height;
    const bool above = cane.below_wire.count < 0;
    const bool renews = cane.below_wire > asks.low_from && !cane.sucker;  // a sucker brings no head down
    const std::string_view key = above                                   ? "rule.origin-height.above"
                                 : cane.below_wire < asks.band.full.low  ? "rule.origin-height.near"
                                 : renews                                ? "rule.origin-height.very-low"
                                 : cane.below_wire > asks.band.full.high ? "rule.origin-height.low"
                                                                         : "rule.origin-height.full";
    return measured_in(Unit::mm, cane.below_wire, asks.band.full, asks.band.half, key,
                       {{"part", cane.axis},
                        {"measured", above ? -cane.below_wire : cane.below_wire},
                        {"low", asks.band.full.low},
                        {"high", asks.band.full.high}});
}

const Rule origin_height{
    RuleName::origin_height, {"rule.origin-height.asks"},   Group::cane_choice, Step::choose, Per::cane, Status::choice,
    origin_height_claims,    {"rule.origin-height.missing"}};

}  // namespace spurwright::rules
