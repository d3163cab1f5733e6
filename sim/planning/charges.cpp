#include "sim/planning/charges.h"

#include <algorithm>

#include "sim/core/check.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/complete.h"
#include "sim/planning/open_choices.h"

namespace spurwright::planning {
namespace {

using rules::Step;

AxisId axis_of_edit(const Edit& edit) {
    if (const auto* cut = std::get_if<Cut>(&edit)) return axis_of(cut->past);
    if (const auto* lay = std::get_if<Lay>(&edit)) return lay->cane;
    if (const auto* tie = std::get_if<Fasten>(&edit)) return axis_of(tie->at);
    return std::get<Mark>(edit).axis;
}

bool changes_the_wood(const Edit& edit) { return std::holds_alternative<Cut>(edit) || std::holds_alternative<Lay>(edit); }

bool is_cane_of(const Choice& choice, AxisId axis) {
    return (choice.left_cane && axis_of(choice.left_cane) == axis) ||
           (choice.right_cane && axis_of(choice.right_cane) == axis);
}
bool is_spur_of(const Choice& choice, AxisId axis) { return choice.left_spur == axis || choice.right_spur == axis; }

// What the two keep: 0 no cane differs, 1 where a cane is cut, 2 which canes lie where.
int canes_differ(const Choice& one, const Choice& other) {
    const auto axis = [](NodeId cane) { return cane ? axis_of(cane) : AxisId{}; };
    if (axis(one.left_cane) != axis(other.left_cane) || axis(one.right_cane) != axis(other.right_cane)) return 2;
    return one.left_cane != other.left_cane || one.right_cane != other.right_cane ? 1 : 0;
}
bool spur_axes_differ(const Choice& one, const Choice& other) {
    return one.left_spur != other.left_spur || one.right_spur != other.right_spur;
}

Step step_apart(const Choice& kept, const Choice& better) {
    const int canes = canes_differ(kept, better);
    if (canes == 2 || spur_axes_differ(kept, better)) return Step::choose;
    return canes == 1 ? Step::lengths : Step::spurs;
}

class Reckoning {
public:
    Reckoning(const Vine& before, const rules::HouseRules& house, const Planning& planning, const Plan& plan,
              const rules::Judgement& mine)
        : before_(before), house_(house), tables_(planning.tables()), plan_(plan), mine_(mine), hand_(before) {}

    Charges reckon() {
        open_ = best_pick(tables_.tables);
        SPURWRIGHT_CHECK(open_.has_value(), ==, true);
        const Ranked best = *open_;
        found_.best = {best.sum};
        found_.mine = mine_.points_before_caps;
        found_.caps = (mine_.points_before_caps - mine_.points) - Tenths{best.sum - best.points};
        found_.open_after.push_back({best.points});
        for (std::size_t i = 0; i < plan_.edits.size(); ++i) {
            const auto fine = prune_one(hand_, plan_.edits[i], before_);
            SPURWRIGHT_CHECK(fine.has_value(), ==, true);
            if (open_ && (changes_the_wood(plan_.edits[i]) || snapped(plan_.edits[i]))) charge(i);
            found_.open_after.push_back({open_ ? open_->points : 0});
        }
        if (open_) reckon_the_hand();
        return std::move(found_);
    }

private:
    // A tie can pull a laid cane down until it breaks.
    bool snapped(const Edit& edit) const {
        const auto* tie = std::get_if<Fasten>(&edit);
        return tie && std::any_of(hand_.laid.begin(), hand_.laid.end(), [&](const Laid& laid) {
            return laid.axis == axis_of(tie->at) && laid.winter == hand_.winter && laid.state == LaidState::snapped;
        });
    }

    void add(Step step, Tenths lost) { found_.by_step[static_cast<std::size_t>(step)] += lost; }

    void charge(std::size_t edit) {
        const auto now = best_pick(open_choices(tables_, hand_));
        if (now && now->pick == open_->pick) return;
        Charge charge;
        charge.edit = edit;
        charge.on = axis_of_edit(plan_.edits[edit]);
        charge.better = choice_of(tables_, open_->pick);
        if (now) charge.left = choice_of(tables_, now->pick);
        // With no cane left to lay, all that is still lost was lost here.
        charge.lost = now ? Tenths{open_->sum - now->sum} : Tenths{open_->sum} - mine_.points_before_caps;
        charge.missed = missed(charge.better);
        charge.step = step_of_charge(charge);
        open_ = now;
        if (charge.lost.count == 0) return found_.even.push_back(charge);
        add(charge.step, charge.lost);
        found_.edits.push_back(charge);
    }

    // Only its crown is left, or not even that.
    bool gone(AxisId id) const {
        const Axis& axis = *hand_.find(id);
        return axis.removed || axis.node_count < 2 || hand_.nodes_of(axis)[1].removed;
    }

    AxisId missed(const Choice& better) const {
        for (const AxisId axis : {better.left_cane ? axis_of(better.left_cane) : AxisId{},
                                  better.right_cane ? axis_of(better.right_cane) : AxisId{}, better.left_spur,
                                  better.right_spur})
            if (axis && gone(axis)) return axis;
        return {};
    }

    Step step_of_charge(const Charge& charge) const {
        if (charge.missed || !std::holds_alternative<Cut>(plan_.edits[charge.edit])) return Step::choose;
        if (is_cane_of(charge.better, charge.on)) return Step::lengths;
        return is_spur_of(charge.better, charge.on) ? Step::spurs : Step::choose;
    }

    void reckon_the_hand() {
        const rules::Offers offers = rules::offers(before_, house_);
        const Choice kept = kept_choice(before_, rules::measure_plan(before_, hand_, house_, offers), house_);
        const auto pick = pick_of(tables_, kept);
        Choice meant = choice_of(tables_, open_->pick);
        if (pick) {
            const Tenths lost{open_->sum - sum_of(tables_.tables, *pick)};
            if (lost.count != 0) {
                found_.mending = Mending{step_apart(kept, meant), lost, kept, meant};
                add(found_.mending->step, lost);
            }
            meant = kept;
        }
        const auto careful = prune(before_, complete(before_, house_, meant));
        SPURWRIGHT_CHECK(careful.has_value(), ==, true);
        const rules::Judgement asked = rules::judge(before_, *careful, house_, offers, rules::asked(offers, house_));
        SPURWRIGHT_CHECK(asked.findings.size(), ==, mine_.findings.size());
        for (std::size_t i = 0; i < mine_.findings.size(); ++i) {
            const Tenths lost = asked.findings[i].points - mine_.findings[i].points;
            if (lost.count == 0) continue;
            found_.hand.push_back({i, lost});
            add(mine_.findings[i].step, lost);
        }
    }

    const Vine& before_;
    const rules::HouseRules& house_;
    const VineTables& tables_;
    const Plan& plan_;
    const rules::Judgement& mine_;
    Vine hand_;
    std::optional<Ranked> open_;
    Charges found_;
};

}  // namespace

Charges charges(const Vine& before, const rules::HouseRules& house, const Planning& planning, const Plan& plan,
                const rules::Judgement& mine) {
    return Reckoning(before, house, planning, plan, mine).reckon();
}

}  // namespace spurwright::planning
