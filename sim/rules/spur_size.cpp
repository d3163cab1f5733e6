#include "sim/rules/spur_size.h"

namespace spurwright::rules {
namespace {

bool is_sound(const HealthFacts& is) { return !is.spot && !is.wound && !is.cracked && is.dead_buds == 0; }

}  // namespace

PerMille mark_spur_size(const SpurFacts& spur, const HouseRules& house) {
    if (!is_sound(spur.health)) return no_mark;
    return mark_from(house.spur_size.full_from, house.spur_size.half_from, spur.first_joint_diameter);
}

Said say_spur_size(const SpurFacts& spur, const HouseRules& house) {
    const auto& asks = house.spur_size;
    const HealthFacts& is = spur.health;
    const std::string_view key = is.spot                                       ? "rule.spur-size.spot"
                                 : is.wound || is.cracked                      ? "rule.spur-size.wound"
                                 : is.dead_buds > 0                            ? "rule.spur-size.dead-bud"
                                 : spur.first_joint_diameter >= asks.full_from ? "rule.spur-size.full"
                                 : spur.first_joint_diameter >= asks.half_from ? "rule.spur-size.thinnish"
                                                                               : "rule.spur-size.thin";
    Said said =
        measured_in(Unit::mm, spur.first_joint_diameter, at_least(asks.full_from), at_least(asks.half_from), key,
                    {{"part", spur.axis},
                     {"measured", spur.first_joint_diameter},
                     {"low", asks.full_from},
                     {"least", asks.half_from}});
    if (!is_sound(is))
        said.measured_word = is.spot ? "spot" : is.dead_buds > 0 && !is.wound && !is.cracked ? "dead bud" : "wound";
    return said;
}

const Rule spur_size{RuleName::spur_size, {"rule.spur-size.asks"}, Group::spurs,     Step::choose,
                     Per::spur,           Status::choice,          spur_size_claims, {"rule.spur-size.missing"}};

}  // namespace spurwright::rules
