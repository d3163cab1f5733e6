#include "sim/rules/spur_buds.h"

namespace spurwright::rules {

// A condition, not a line: outside full and inside half is one half.
PerMille mark_spur_buds(const SpurFacts& spur, const HouseRules& house) {
    const Measure<struct number_of_buds> buds{spur.count_buds};
    const auto& asks = house.spur_buds;
    if (buds >= asks.full.low && buds <= asks.full.high) return full_mark;
    return buds >= asks.half.low && buds <= asks.half.high ? half_mark : no_mark;
}

Said say_spur_buds(const SpurFacts& spur, const HouseRules& house) {
    const auto& asks = house.spur_buds;
    Said said;
    said.measured = spur.count_buds * 1000;
    said.unit = Unit::count;
    said.full = wanted(asks.full, 1000);
    said.half = wanted(asks.half, 1000);
    const bool many = spur.count_buds > asks.full.high.count;
    said.key = TextKey{many                                    ? "rule.spur-buds.many"
                       : spur.count_buds < asks.full.low.count ? "rule.spur-buds.few"
                                                               : "rule.spur-buds.full"};
    said.arguments = {{"part", spur.axis},
                      {"n", Count{spur.count_buds}},
                      {"low", Count{asks.full.low.count}},
                      {"high", Count{asks.full.high.count}}};
    said.if_lost = many ? Mend::now : Mend::next_winter;
    return said;
}

const Rule spur_buds{RuleName::spur_buds, {"rule.spur-buds.asks"}, Group::spurs,     Step::spurs,
                     Per::spur,           Status::choice,          spur_buds_claims, {"rule.spur-buds.missing"}};

}  // namespace spurwright::rules
