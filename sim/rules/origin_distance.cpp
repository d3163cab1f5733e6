#include "sim/rules/origin_distance.h"

namespace spurwright::rules {
namespace {

using House = HouseRules::OriginDistance;

// What the house asks about: the creep where it says so and last winter's origin is known.
bool by_creep(const std::optional<Length>& creep, const House& house) {
    return house.measure == OriginMeasure::creep && creep;
}

bool beyond_the_arm(Length distance, const House& house) {
    return house.measure == OriginMeasure::creep && house.arm_to && distance > *house.arm_to;
}

}  // namespace

PerMille mark_origin_distance(Length distance_to_head, std::optional<Length> creep, const HouseRules& house) {
    const House& asks = house.origin_distance;
    if (beyond_the_arm(distance_to_head, asks)) return no_mark;
    return mark_to(asks.full_to, asks.half_to, by_creep(creep, asks) ? *creep : distance_to_head);
}

Said say_origin_distance(const CaneFacts& cane, const HouseRules& house) {
    const House& asks = house.origin_distance;
    const bool creeps = by_creep(cane.creep, asks);
    const Length measured = creeps ? *cane.creep : cane.distance_to_head;
    std::string_view key;
    if (beyond_the_arm(cane.distance_to_head, asks))
        key = "rule.origin-distance.renew-arm";
    else if (measured <= asks.full_to)
        key = creeps ? "rule.origin-distance.creep-full" : "rule.origin-distance.full";
    else if (measured <= asks.half_to)
        key = creeps ? "rule.origin-distance.creep-farther" : "rule.origin-distance.farther";
    else
        key = creeps ? "rule.origin-distance.creep-far" : "rule.origin-distance.far";
    return measured_in(Unit::mm, measured, at_most(asks.full_to), at_most(asks.half_to), key,
                       {{"part", cane.axis},
                        {"measured", measured},
                        {"high", asks.full_to},
                        {"most", asks.half_to},
                        {"distance", cane.distance_to_head}});
}

Said say_creep(const CaneFacts& cane) {
    Said said;
    said.measured = cane.creep->count;
    said.unit = Unit::mm;
    said.key = TextKey{cane.creep->count > 0   ? "rule.origin-distance.creep-out"
                       : cane.creep->count < 0 ? "rule.origin-distance.creep-in"
                                               : "rule.origin-distance.creep-same"};
    said.arguments = {{"part", cane.axis},
                      {"measured", Length{cane.creep->count > 0 ? cane.creep->count : -cane.creep->count}},
                      {"distance", cane.distance_to_head}};
    said.if_lost = Mend::nothing;
    return said;
}

const Rule origin_distance{RuleName::origin_distance,
                           {"rule.origin-distance.asks"},
                           Group::cane_choice,
                           Step::choose,
                           Per::cane,
                           Status::choice,
                           origin_distance_claims,
                           {"rule.origin-distance.missing"}};

}  // namespace spurwright::rules
