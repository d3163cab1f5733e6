#include "sim/rules/internode_evenness.h"

namespace spurwright::rules {

PerMille mark_internode_evenness(const CaneFacts& cane, const HouseRules& house) {
    return mark_to(house.internode_evenness.full_to, house.internode_evenness.half_to, cane.joint_variation);
}

Said say_internode_evenness(const CaneFacts& cane, const HouseRules& house) {
    const auto& asks = house.internode_evenness;
    const std::string_view key = cane.joint_variation <= asks.full_to   ? "rule.internode-evenness.full"
                                 : cane.joint_variation <= asks.half_to ? "rule.internode-evenness.uneven"
                                                                        : "rule.internode-evenness.very-uneven";
    Said said = measured_in(Unit::ratio, cane.joint_variation, at_most(asks.full_to), at_most(asks.half_to), key,
                            {{"part", cane.axis}, {"measured", cane.joint_variation}, {"high", asks.full_to}});
    said.if_lost = Mend::carried;
    return said;
}

const Rule internode_evenness{RuleName::internode_evenness,
                              {"rule.internode-evenness.asks"},
                              Group::cane_choice,
                              Step::choose,
                              Per::cane,
                              Status::choice,
                              {},
                              {"rule.internode-evenness.missing"}};

}  // namespace spurwright::rules
