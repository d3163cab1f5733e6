#include "sim/rules/spur_direction.h"

namespace spurwright::rules {
namespace {

bool points_well(Points bud, FirstBud wanted) {
    if (wanted == FirstBud::up) return bud == Points::up;
    return bud == Points::outward || bud == Points::down;
}

}  // namespace

bool stands_across(const SpurFacts& spur, const HouseRules& house) {
    return spur.off_row_plane > house.spur_direction.full_to;
}

PerMille mark_spur_direction(const SpurFacts& spur, const HouseRules& house) {
    if (house.spur_direction.upright) {
        const Angle full = house.spur_direction.full_to;
        return mark_in(Band<Angle>{{{0}, full}, {{0}, {2 * full.count}}}, spur.off_upright);
    }
    if (stands_across(spur, house)) return no_mark;
    return points_well(spur.first_bud, house.spur_direction.first_bud) ? full_mark : half_mark;
}

Said say_spur_direction(const SpurFacts& spur, const HouseRules& house) {
    const auto& asks = house.spur_direction;
    if (asks.upright) {
        const PerMille mark = mark_spur_direction(spur, house);
        Said said = measured_in(Unit::deg, spur.off_upright, at_most(asks.full_to), at_most(Angle{2 * asks.full_to.count}),
                                mark == full_mark ? "rule.spur-direction.upright"
                                : mark > no_mark  ? "rule.spur-direction.leaning"
                                                  : "rule.spur-direction.lying",
                                {{"part", spur.axis}, {"measured", spur.off_upright}, {"high", asks.full_to}});
        said.if_lost = Mend::carried;
        return said;
    }
    const bool up = asks.first_bud == FirstBud::up;
    Said said = measured_in(Unit::deg, spur.off_row_plane, at_most(asks.full_to), at_most(asks.full_to),
                            stands_across(spur, house)                      ? "rule.spur-direction.across"
                            : points_well(spur.first_bud, asks.first_bud)   ? "rule.spur-direction.full"
                            : up                                            ? "rule.spur-direction.bud-not-up"
                                                                            : "rule.spur-direction.bud-not-out",
                            {{"part", spur.axis}, {"measured", spur.off_row_plane}, {"high", asks.full_to}});
    said.measured_word = word_of(spur.first_bud);
    said.if_lost = Mend::carried;
    return said;
}

const Rule spur_direction{
    RuleName::spur_direction, {"rule.spur-direction.asks"},   Group::spurs, Step::spurs, Per::spur, Status::choice,
    spur_direction_claims,    {"rule.spur-direction.missing"}};

}  // namespace spurwright::rules
