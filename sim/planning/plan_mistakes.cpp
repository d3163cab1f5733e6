#include "sim/planning/plan_mistakes.h"

#include "sim/planning/open_choices.h"
#include "sim/rules/say.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

using rules::MistakeName;
using rules::RuleName;

NodeId cane_towards(const Choice& choice, Side side) { return side == Side::left ? choice.left_cane : choice.right_cane; }

Tenths points_for(const rules::Judgement& judgement, Side side, std::initializer_list<RuleName> names) {
    Tenths sum;
    for (const rules::Finding& f : judgement.findings)
        for (const RuleName name : names)
            if (f.rule->name == name && f.side == side) sum += f.points;
    return sum;
}

}  // namespace

std::vector<rules::Mistake> plan_mistakes(const Vine& before, const rules::PlanFacts& facts, const rules::Offers& offers,
                                          const rules::Asked& asked, const rules::HouseRules& house,
                                          const Charges& charges, const Choice& best_choice,
                                          const rules::Judgement& mine, const rules::Judgement& best) {
    std::vector<rules::Mistake> found = rules::mistakes(before, facts, offers, asked, house);
    const Choice kept = kept_choice(before, facts, house);
    for (const Side side : both_sides) {
        const NodeId own = cane_towards(kept, side), better = cane_towards(best_choice, side);
        if (!own || !better || axis_of(own) == axis_of(better)) continue;
        const Length thicker = thickness(before, *before.find(axis_of(own))) - thickness(before, *before.find(axis_of(better)));
        const auto of = [&](const rules::Judgement& j, std::initializer_list<RuleName> names) { return points_for(j, side, names); };
        const auto place = {RuleName::origin_distance, RuleName::origin_height, RuleName::cane_side};
        const auto wood = {RuleName::cane_diameter, RuleName::cane_end_diameter};
        const Tenths lost = of(best, place) - of(mine, place), gained = of(mine, wood) - of(best, wood);
        if (thicker > house.acceptable.see_diameter && lost - gained > house.acceptable.within)
            found.push_back({MistakeName::thickness_alone, RuleName::origin_distance, axis_of(own), side,
                             {{"part", axis_of(own)}, {"better", axis_of(better)}, {"side", rules::side_key(side)}, {"by", thicker}}});
    }
    for (const Charge& charge : charges.edits)
        for (const Side side : both_sides) {
            if (charge.lost <= house.acceptable.within) continue;  // nobody is told that as good a cane is the wrong one
            const NodeId meant = cane_towards(charge.better, side), stays = cane_towards(kept, side);
            if (!charge.missed || !meant || axis_of(meant) != charge.missed || !stays) continue;
            found.push_back({MistakeName::wrong_cane_cut, RuleName::cane_count, charge.missed, side,
                             {{"part", charge.missed}, {"kept", axis_of(stays)}, {"side", rules::side_key(side)}, {"lost", charge.lost}}});
        }
    return found;
}

}  // namespace spurwright::planning
