#include "sim/rules/cane_side.h"

namespace spurwright::rules {
namespace {

bool crosses_the_head(const CaneFacts& cane, const HouseRules::CaneSide& house) {
    return !house.over_the_head && cane.over_the_head > house.over_by;
}

}  // namespace

PerMille mark_cane_side(const CaneFacts& cane, const HouseRules& house) {
    if (crosses_the_head(cane, house.cane_side)) return no_mark;
    return mark_to(house.cane_side.full_to, house.cane_side.half_to, cane.off_row);
}

Said say_cane_side(const CaneFacts& cane, const HouseRules& house) {
    const auto& asks = house.cane_side;
    const std::string_view key = crosses_the_head(cane, asks)   ? "rule.cane-side.over-the-head"
                                 : cane.off_row <= asks.full_to ? "rule.cane-side.full"
                                 : cane.off_row <= asks.half_to ? "rule.cane-side.slanting"
                                                                : "rule.cane-side.across";
    return measured_in(Unit::deg, cane.off_row, at_most(asks.full_to), at_most(asks.half_to), key,
                       {{"part", cane.axis},
                        {"side", side_key(cane.side)},
                        {"measured", cane.off_row},
                        {"high", asks.full_to},
                        {"most", asks.half_to},
                        {"over", cane.over_the_head}});
}

const Rule cane_side{
    RuleName::cane_side,       {"rule.cane-side.asks"}, Group::cane_choice, Step::choose, Per::cane, Status::choice, {},
    {"rule.cane-side.missing"}};

}  // namespace spurwright::rules
