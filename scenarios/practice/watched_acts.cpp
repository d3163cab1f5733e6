#include "scenarios/practice/watched_acts.h"

#include <algorithm>

#include "scenarios/practice/why_off.h"
#include "sim/core/check.h"
#include "sim/rules/bud_load.h"
#include "sim/rules/judge.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/rule_list.h"

namespace spurwright::practice {
namespace {

using rules::RuleName;
using rules::Step;

class ActTeller {
public:
    ActTeller(const Vine& start, const rules::HouseRules& house, const Plan& plan) : start_(start), house_(house) {
        auto after = prune(start, plan);
        SPURWRIGHT_CHECK(after.has_value(), ==, true);  // a completed plan is legal on its vine
        const rules::Offers offers = rules::offers(start, house);
        facts_ = rules::measure_plan(start, *after, house, offers);
        judged_ = rules::judge(start, *after, house, offers, rules::asked(offers, house));
        after_ = *std::move(after);
    }

    WatchedAct look() const {
        return {std::nullopt, {{"act.look"}, {}}, Step::look, {}, {{nullptr, Status::choice, {"step.say.look"}, {}, false}}};
    }

    WatchedAct act(const Edit& edit) const {
        WatchedAct told = std::visit(*this, edit);
        told.edit = edit;
        told.named = named(edit, after_);
        return told;
    }

    WatchedAct operator()(const Mark& mark) const {
        if (mark.role == Role::spur && start_.system == System::cordon) return told(Step::choose, {mark.axis, {}, {}}, judged(mark.axis, {RuleName::spur_place, RuleName::spur_size, RuleName::cane_health}));
        if (mark.role == Role::spur) return told(Step::choose, {mark.axis, {}, {}}, judged(mark.axis, {RuleName::spur_place, RuleName::spur_size, RuleName::spur_count}));
        return told(Step::choose, {mark.axis, {}, {}},
                    judged(mark.axis, {RuleName::cane_diameter, RuleName::internode_length, RuleName::origin_distance, RuleName::origin_height, RuleName::cane_health}));
    }

    WatchedAct operator()(const Cut& cut) const {
        const AxisId id = axis_of(cut.past);
        const Spot spot{id, cut.past, std::max(cut.beyond, Length{})};
        for (const rules::SidePieces& side : facts_.sides) {
            if ((side.spur && side.spur->axis == id) || in_row(side, id)) return told(Step::spurs, spot, judged(id, {RuleName::spur_buds, RuleName::end_cut}));
            if (side.cane && side.cane->axis == id) return told(Step::lengths, spot, why_so_long(*side.cane));
        }
        const Axis& axis = *start_.find(id);
        const bool on_kept = axis.parent && is_kept(axis_of(axis.parent));
        return told(!on_kept ? Step::clear : start_.system == System::cordon ? Step::spurs : Step::lengths, spot, why_off(start_, house_, facts_.sides, cut));
    }

    WatchedAct operator()(const Lay& lay) const { return told(Step::lay_and_tie, {lay.cane, {}, {}}, judged(lay.cane, {RuleName::cane_side, RuleName::cane_count, RuleName::wood_age})); }

    WatchedAct operator()(const Fasten& tie) const {
        std::vector<Reason> why = judged(axis_of(tie.at), {RuleName::tying});
        const rules::Rule& rule = rules::rule_of(RuleName::tying);
        if (!(why.front().key == rule.asks)) why.insert(why.begin(), {&rule, rule.status, rule.asks, {}, false});  // what a hand does, before what came of it
        return told(Step::lay_and_tie, {axis_of(tie.at), tie.at, tie.beyond}, std::move(why));
    }

private:
    static WatchedAct told(Step step, Spot spot, std::vector<Reason> why) { return {std::nullopt, {}, step, spot, std::move(why)}; }

    static bool in_row(const rules::SidePieces& side, AxisId id) {
        return std::any_of(side.row.begin(), side.row.end(), [id](const auto& one) { return one.spur.axis == id; });
    }

    bool is_kept(AxisId id) const {
        for (const rules::SidePieces& side : facts_.sides)
            if (in_row(side, id) || (side.spur && side.spur->axis == id) || (side.cane && side.cane->axis == id)) return true;
        return false;
    }

    const rules::Finding* finding(RuleName rule, const std::string& on) const {
        for (const auto* list : {&judged_.findings, &judged_.remarks})
            for (const rules::Finding& f : *list)
                if (f.rule->name == rule && f.on == on) return &f;
        return nullptr;
    }

    // What the judge says of this piece under these rules; first what speaks for it, in their order, then what it lacks.
    std::vector<Reason> judged(AxisId on, std::initializer_list<RuleName> rules) const {
        std::vector<Reason> why;
        for (const RuleName rule : rules)
            if (const rules::Finding* f = finding(rule, name_of(on))) why.push_back({f->rule, f->status, f->said.key, f->said.arguments, f->lost().count > 0});
        std::stable_sort(why.begin(), why.end(), [](const Reason& a, const Reason& b) { return a.lacks < b.lacks; });
        // Where nothing speaks for it, or the vine asks for no such piece: what the rule asks for leads.
        if (why.empty() || why.front().lacks) {
            const rules::Rule& rule = rules::rule_of(*rules.begin());
            why.insert(why.begin(), {&rule, rule.status, rule.asks, {}, false});
        }
        return why;
    }

    std::vector<Reason> why_so_long(const rules::CaneFacts& cane) const {
        const rules::Rule& load = rules::rule_of(RuleName::bud_load);
        const Status status = house_.set_by_house[rules::index_of(RuleName::bud_load)] ? Status::house : load.status;
        std::vector<Reason> why{{&load,
                                 status,
                                 {"watch.length"},
                                 {{"n", Count{cane.count_buds}},
                                  {"all", Count{facts_.load.counted()}},
                                  {"asked", Count{rules::target_buds(house_, facts_.load.spacing)}}},
                                 false}};
        for (const Named& said : rules::say_bud_load(facts_.load, house_).arguments)
            if (said.gap == "low" || said.gap == "high") why.front().arguments.push_back(said);
        for (Reason& reason : judged(cane.axis, {RuleName::cane_reach, RuleName::cane_end_diameter, RuleName::end_cut})) why.push_back(std::move(reason));
        return why;
    }

    const Vine& start_;
    const rules::HouseRules& house_;
    Vine after_;
    rules::PlanFacts facts_;
    rules::Judgement judged_;
};

}  // namespace

std::vector<WatchedAct> watched_acts(const Vine& start, const rules::HouseRules& house, const Plan& plan) {
    const ActTeller teller(start, house, plan);
    std::vector<WatchedAct> acts{teller.look()};
    for (const Edit& edit : plan.edits) acts.push_back(teller.act(edit));
    return acts;
}

}  // namespace spurwright::practice
