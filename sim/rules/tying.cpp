#include "sim/rules/tying.h"

namespace spurwright::rules {
namespace {

using EndTie = TyingFacts::EndTie;

bool wraps_too_many(const TyingFacts& is, const HouseRules::Tying& house) {
    return is.half_wraps > house.wraps.high.count || is.half_wraps < house.wraps.low.count;
}

int slips(const TyingFacts& is, const HouseRules::Tying& house) {
    return (is.end_tie != EndTie::tight) + (is.sag >= house.sag_full) + wraps_too_many(is, house) +
           (is.tight_elsewhere > 0);
}

}  // namespace

PerMille mark_tying(const CaneFacts& cane, const HouseRules& house) {
    const TyingFacts& is = cane.tying;
    const int count = slips(is, house.tying);
    if (is.ties_over_buds > 0 || is.sag > house.tying.sag_half || count > 1) return no_mark;
    return count == 1 ? half_mark : full_mark;
}

Said say_tying(const CaneFacts& cane, const HouseRules& house) {
    const TyingFacts& is = cane.tying;
    const auto& asks = house.tying;
    Said said;
    std::string_view key = "rule.tying.full";
    if (is.ties_over_buds > 0)
        key = "rule.tying.over-bud";
    else if (slips(is, asks) > 1)
        key = "rule.tying.slips";
    else if (is.end_tie == EndTie::none)
        key = "rule.tying.no-end-tie";
    else if (is.end_tie == EndTie::loose)
        key = "rule.tying.loose-end";
    else if (is.tight_elsewhere > 0)
        key = "rule.tying.tight-elsewhere";
    else if (wraps_too_many(is, asks))
        key = "rule.tying.wraps";
    else if (is.sag >= asks.sag_full)
        key = "rule.tying.sag";
    said.key = TextKey{key};
    said.measured = is.half_wraps * 500;
    said.unit = Unit::count;
    said.full = wanted(asks.wraps, 500);
    said.arguments = {{"part", cane.axis},
                      {"wraps", Ratio{is.half_wraps / 2.0}},
                      {"most", Ratio{asks.wraps.high.count / 2.0}},
                      {"sag", is.sag},
                      {"slips", Count{slips(is, asks)}}};
    said.if_lost = Mend::now;
    return said;
}

Said say_skin_crack(const CaneFacts& cane) {
    Said said;
    said.key = TextKey{"rule.tying.skin-crack"};
    said.arguments = {{"part", cane.axis}};
    said.if_lost = Mend::nothing;
    return said;
}

const Rule tying{RuleName::tying, {"rule.tying.asks"}, Group::tidiness, Step::lay_and_tie,
                 Per::cane,       Status::choice,      tying_claims,    {"rule.tying.missing"}};

}  // namespace spurwright::rules
