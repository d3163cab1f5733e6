#include "sim/planning/cordon_charges.h"

#include <algorithm>
#include <map>

#include "sim/core/check.h"
#include "sim/vine/vine_query.h"

namespace spurwright::planning {
namespace {

using rules::Step;

AxisId wood_of(const Edit& edit) {
    if (const auto* cut = std::get_if<Cut>(&edit)) return axis_of(cut->past);
    if (const auto* lay = std::get_if<Lay>(&edit)) return lay->cane;
    if (const auto* tie = std::get_if<Fasten>(&edit)) return axis_of(tie->at);
    return std::get<Mark>(edit).axis;
}

// How many of a cane's first ripe count nodes still stand.
std::size_t lengths_left(const Vine& before, const Vine& now, AxisId id, const rules::HouseRules& house) {
    const Axis& axis = *now.find(id);
    if (axis.removed) return 0;
    const auto nodes = now.nodes_of(axis);
    std::size_t n = 0;
    for (const std::uint32_t node : ripe_count_nodes(before, *before.find(id), house.habits())) {
        if (nodes[node].removed) break;
        ++n;
    }
    return n;
}

bool same_canes(const CordonChoice& one, const CordonChoice& other) {
    const auto same_axis = [](const SpurKept& a, const SpurKept& b) { return a.axis == b.axis; };
    for (std::size_t side = 0; side < 2; ++side)
        if (!std::equal(one[side].begin(), one[side].end(), other[side].begin(), other[side].end(), same_axis)) return false;
    return true;
}

class RowReckoning {
public:
    RowReckoning(const Vine& before, const rules::HouseRules& house, const CordonTables& tables, const Plan& plan,
                 const rules::Judgement& mine)
        : before_(before), house_(house), tables_(tables), plan_(plan), mine_(mine), hand_(before), open_(best_pick(tables)) {}

    CordonCharges reckon() {
        Charges& charges = found_.charges;
        charges.best = {open_.sum};
        charges.mine = mine_.points_before_caps;
        charges.caps = (mine_.points_before_caps - mine_.points) - Tenths{open_.sum - open_.points};
        charges.open_after.push_back({open_.points});
        for (std::size_t i = 0; i < plan_.edits.size(); ++i) {
            const auto fine = prune_one(hand_, plan_.edits[i], before_);
            SPURWRIGHT_CHECK(fine.has_value(), ==, true);
            if (std::holds_alternative<Cut>(plan_.edits[i])) charge(i);
            charges.open_after.push_back({open_.points});
        }
        reckon_the_hand();
        return std::move(found_);
    }

private:
    void add(Step step, Tenths lost) { found_.charges.by_step[static_cast<std::size_t>(step)] += lost; }

    void charge(std::size_t edit) {
        const CordonRanked now = best_pick(open_rows(tables_, before_, hand_, house_));
        if (now.pick == open_.pick) return;
        const CordonChoice better = choice_of(tables_, open_.pick);
        Charge charge;
        charge.edit = edit;
        charge.on = wood_of(plan_.edits[edit]);
        charge.lost = {open_.sum - now.sum};
        charge.left = Choice{};
        for (const auto& row : better)
            for (const SpurKept& spur : row)
                if (!charge.missed && lengths_left(before_, hand_, spur.axis, house_) == 0) charge.missed = spur.axis;
        charge.step = charge.missed ? Step::choose : Step::spurs;
        open_ = now;
        if (charge.lost.count == 0) {
            found_.charges.even.push_back(charge);
            found_.even_better.push_back(better);
            return;
        }
        add(charge.step, charge.lost);
        found_.charges.edits.push_back(charge);
        found_.better.push_back(better);
        found_.left.push_back(choice_of(tables_, now.pick));
    }

    void reckon_the_hand() {
        const rules::Offers offers = rules::offers(before_, house_);
        const rules::Asked asked = rules::asked(offers, house_);
        found_.kept = kept_row(rules::measure_plan(before_, hand_, house_, offers));
        found_.meant = choice_of(tables_, open_.pick);
        const auto pick = pick_of(tables_, found_.kept);
        CordonChoice carried_out = found_.meant;
        if (pick) {
            const Tenths lost{open_.sum - sum_of(tables_, *pick)};
            if (lost.count != 0) {
                const Step step = same_canes(found_.kept, found_.meant) ? Step::spurs : Step::choose;
                found_.charges.mending = Mending{step, lost, {}, {}};
                add(step, lost);
            }
            carried_out = found_.kept;
        }
        const auto careful = prune(before_, complete(before_, house_, carried_out));
        SPURWRIGHT_CHECK(careful.has_value(), ==, true);
        charge_the_hand(rules::judge(before_, *careful, house_, offers, asked));
    }

    // By rule and side, since a row has as many findings of a rule as spurs; told by the finding of it that lost most.
    void charge_the_hand(const rules::Judgement& careful) {
        std::map<std::pair<std::size_t, Side>, Tenths> lost;
        const auto place = [](const rules::Finding& f) { return std::pair{rules::index_of(f.rule->name), f.side}; };
        for (const rules::Finding& f : careful.findings) lost[place(f)] += f.points;
        for (const rules::Finding& f : mine_.findings) lost[place(f)] -= f.points;
        for (const auto& [where, less] : lost) {
            if (less.count == 0) continue;
            std::optional<std::size_t> told;
            for (std::size_t i = 0; i < mine_.findings.size(); ++i)
                if (place(mine_.findings[i]) == where && (!told || mine_.findings[i].lost() > mine_.findings[*told].lost()))
                    told = i;
            SPURWRIGHT_CHECK(told.has_value(), ==, true);  // both judge the same rules on the same sides
            found_.charges.hand.push_back({*told, less});
            add(mine_.findings[*told].step, less);
        }
    }

    const Vine& before_;
    const rules::HouseRules& house_;
    const CordonTables& tables_;
    const Plan& plan_;
    const rules::Judgement& mine_;
    Vine hand_;
    CordonRanked open_;
    CordonCharges found_;
};

}  // namespace

CordonTables open_rows(const CordonTables& tables, const Vine& before, const Vine& now, const rules::HouseRules& house) {
    CordonTables open = tables;
    for (CordonTables::Arm& arm : open.arms)
        for (CordonTables::Cane& cane : arm.canes)
            cane.worth.resize(std::min(cane.worth.size(), lengths_left(before, now, cane.axis, house)));
    return open;
}

CordonChoice kept_row(const rules::PlanFacts& facts) {
    CordonChoice kept;
    for (std::size_t side = 0; side < 2; ++side)
        for (const auto& one : facts.sides[side].row) kept[side].push_back({one.spur.axis, one.spur.count_buds});
    return kept;
}

std::optional<CordonPick> pick_of(const CordonTables& tables, const CordonChoice& choice) {
    CordonPick pick;
    for (std::size_t side = 0; side < 2; ++side)
        for (const SpurKept& spur : choice[side]) {
            const auto& canes = tables.arms[side].canes;
            const auto at = std::find_if(canes.begin(), canes.end(), [&](const auto& cane) { return cane.axis == spur.axis; });
            if (at == canes.end()) return std::nullopt;
            pick.spurs[side].push_back(
                {static_cast<std::uint16_t>(at - canes.begin()), static_cast<std::uint16_t>(spur.buds)});
        }
    return is_choice(tables, pick) ? std::optional(pick) : std::nullopt;
}

CordonCharges charges_of_cordon(const Vine& before, const rules::HouseRules& house, const CordonTables& tables,
                                const Plan& plan, const rules::Judgement& mine) {
    return RowReckoning(before, house, tables, plan, mine).reckon();
}

}  // namespace spurwright::planning
