#include "sim/rules/cane_diameter.h"

namespace spurwright::rules {
namespace {

using House = HouseRules::CaneDiameter;

bool is_oval(const CaneFacts& cane, const House& house) { return cane.axis_ratio > house.oval; }

bool is_bull(const CaneFacts& cane, const House& house) {
    return cane.diameter > house.bull_above && (is_oval(cane, house) || cane.mean_joint >= house.bull_joint);
}

std::string_view case_of(const CaneFacts& cane, const House& house) {
    if (is_bull(cane, house)) return "rule.cane-diameter.bull";
    if (cane.diameter > house.band.full.high && is_oval(cane, house)) return "rule.cane-diameter.flat";
    if (cane.diameter < house.band.half.low) return "rule.cane-diameter.thin";
    if (cane.diameter < house.band.full.low) return "rule.cane-diameter.thinnish";
    if (cane.diameter > house.band.half.high) return "rule.cane-diameter.thick";
    if (cane.diameter > house.band.full.high) return "rule.cane-diameter.thickish";
    return "rule.cane-diameter.full";
}

}  // namespace

PerMille mark_cane_diameter(const CaneFacts& cane, const HouseRules& house) {
    const House& asks = house.cane_diameter;
    if (is_bull(cane, asks) || (is_oval(cane, asks) && cane.diameter > asks.band.full.high)) return no_mark;
    return mark_in(asks.band, cane.diameter);
}

Said say_cane_diameter(const CaneFacts& cane, const HouseRules& house) {
    const House& asks = house.cane_diameter;
    Said said = measured_in(Unit::mm, cane.diameter, asks.band.full, asks.band.half, case_of(cane, asks),
                            {{"part", cane.axis},
                             {"measured", cane.diameter},
                             {"low", asks.band.full.low},
                             {"high", asks.band.full.high},
                             {"least", asks.band.half.low},
                             {"most", asks.band.half.high}});
    if (is_bull(cane, asks)) said.measured_word = "bull";
    return said;
}

const Rule cane_diameter{
    RuleName::cane_diameter, {"rule.cane-diameter.asks"},   Group::cane_choice, Step::choose, Per::cane, Status::choice,
    cane_diameter_claims,    {"rule.cane-diameter.missing"}};

}  // namespace spurwright::rules
