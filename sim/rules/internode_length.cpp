#include "sim/rules/internode_length.h"

namespace spurwright::rules {

PerMille mark_internode_length(const CaneFacts& cane, const HouseRules& house) {
    return mark_in(house.internode_length, cane.mean_joint);
}

Said say_internode_length(const CaneFacts& cane, const HouseRules& house) {
    const Band<Length>& asks = house.internode_length;
    const std::string_view key = cane.mean_joint < asks.half.low    ? "rule.internode-length.short"
                                 : cane.mean_joint < asks.full.low  ? "rule.internode-length.shortish"
                                 : cane.mean_joint > asks.half.high ? "rule.internode-length.long"
                                 : cane.mean_joint > asks.full.high ? "rule.internode-length.longish"
                                                                    : "rule.internode-length.full";
    return measured_in(
        Unit::mm, cane.mean_joint, asks.full, asks.half, key,
        {{"part", cane.axis}, {"measured", cane.mean_joint}, {"low", asks.full.low}, {"high", asks.full.high}});
}

const Rule internode_length{RuleName::internode_length,
                            {"rule.internode-length.asks"},
                            Group::cane_choice,
                            Step::choose,
                            Per::cane,
                            Status::choice,
                            internode_length_claims,
                            {"rule.internode-length.missing"}};

}  // namespace spurwright::rules
