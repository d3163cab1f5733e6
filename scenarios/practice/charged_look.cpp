#include "scenarios/practice/charged_look.h"

#include <algorithm>

namespace spurwright::practice {
namespace {

auto charge_at(const std::vector<planning::Charge>& charges, std::size_t edit) {
    return std::find_if(charges.begin(), charges.end(), [edit](const planning::Charge& c) { return c.edit == edit; });
}

}  // namespace

const planning::Charge* ChargedLook::of_act(std::size_t edit) const {
    const auto found = charge_at(charges.edits, edit);
    return found == charges.edits.end() ? nullptr : &*found;
}

const planning::CordonChoice* ChargedLook::row_before(std::size_t edit) const {
    const auto nth = static_cast<std::size_t>(charge_at(charges.edits, edit) - charges.edits.begin());
    return nth < better.size() ? &better[nth] : nullptr;
}

ChargedLook charged_look(const Vine& before, const rules::HouseRules& house, const PlansFound& plans, const Plan& plan,
                         const rules::Judgement& mine) {
    ChargedLook look;
    look.plan = plan;
    if (plans.rows) {
        planning::CordonCharges found = planning::charges_of_cordon(before, house, *plans.rows, plan, mine);
        look.shares = planning::charged_findings(before, house, *plans.rows, found, mine);
        look.ways = ahead::two_ways(before, house, found);
        look.charges = std::move(found.charges);
        look.better = std::move(found.better);
        return look;
    }
    look.charges = planning::charges(before, house, *plans.planning, plan, mine);
    look.shares = planning::charged_findings(before, house, *plans.planning, look.charges, mine);
    look.ways = ahead::two_ways(before, house, look.charges);
    return look;
}

}  // namespace spurwright::practice
