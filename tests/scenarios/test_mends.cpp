// What the look back says can be mended, tried: 500 vines as usual, 10,000 where SPURWRIGHT_FULL is set, each with a plan
// that went wrong. "Not lost yet" is done and wins back what it says; of every finding that says "mend now" some further
// act wins the loss back to within tolerance; of those left to next winter, or carried by the vine, none does on a vine
// where nothing else stands to be chosen.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "scenarios/practice/look_back.h"
#include "sim/growth/history.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/charges.h"
#include "sim/planning/open_choices.h"
#include "sim/pruning/legal_edits.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/clearing.h"
#include "sim/rules/measure_pieces.h"
#include "sim/vine/vine_query.h"
#include "tests/support/full_size.h"
#include "tests/support/judged.h"

using namespace spurwright;

namespace {

const rules::HouseRules mending_house;

growth::Site mending_site(std::uint32_t number) {
    constexpr std::array spacings{1.2, 1.5, 1.8, 2.1, 2.4};
    growth::Site s;
    s.seed = 60'000 + number;
    s.age = 4 + static_cast<int>(number % 12);
    s.system = number % 6 == 5 ? System::one_cane : System::two_cane;
    s.spacing_m = s.system == System::one_cane ? 1.2 : spacings[number % spacings.size()];
    s.pruner = static_cast<Pruner>(number / 3 % 6);
    s.vigour = static_cast<Vigour>(number % 3);
    return s;
}

// Points that one rule gives on one side; a single cane and its spur may change sides.
using Given = std::map<std::pair<rules::RuleName, Side>, Tenths>;
std::pair<rules::RuleName, Side> place_of(const rules::Finding& f, bool single) { return {f.rule->name, single ? Side::none : f.side}; }
Given given(const rules::Judgement& judged, bool single) {
    Given sums;
    for (const rules::Finding& f : judged.findings) sums[place_of(f, single)] += f.points;
    return sums;
}

// Further acts on a vine that was worked on, each a plan of its own: everything that a full plan does and was not done,
// together and act by act, for what is kept and for the best that is still open; every cane laid and spur kept ended at
// an earlier bud; every stub cut again as far as careful hands cut.
class FurtherActs {
public:
    FurtherActs(const Vine& before, const Vine& after, const planning::Planning& planning) : before_(before), after_(after) {
        const auto& tables = planning.tables();
        const rules::Offers offers = rules::offers(before, mending_house);
        const rules::PlanFacts facts = rules::measure_plan(before, after, mending_house, offers);
        const auto kept = planning::kept_choice(before, facts, mending_house);
        kept_ = kept;
        old_wood_lies_ = !facts.old_wood_laid.empty();
        if (planning::pick_of(tables, kept)) add(kept);
        if (const auto best = planning::best_pick(planning::open_choices(tables, after)))
            add(planning::choice_of(tables, best->pick));
        for (const NodeId cane : {kept.left_cane, kept.right_cane})
            if (cane) end_earlier(axis_of(cane));
        for (const AxisId spur : {kept.left_spur, kept.right_spur})
            if (spur) end_earlier(spur);
        Plan clear;
        for (const Axis& axis : after.axes) {
            if (axis.state != AxisState::live || !axis.parent || age(after, axis) != 1 || !stands(axis)) continue;
            const Edit off = Cut{node_id(axis.id, 0), Length{3'000}, Tool::shears, {}};
            if (why_not(after, off)) continue;
            all_.push_back({{off}});
            if (is_kept(axis.id)) continue;
            clear.edits.push_back(off);
            end_earlier(axis.id);
            if (is_cane(before, *before.find(axis.id))) lay_instead(axis.id);
        }
        Plan unwanted;
        for (const AxisId id : facts.clearing.pieces_left)
            if (const auto cut = cut_with_any(node_id(id, 0), Length{3'000})) unwanted.edits.push_back(*cut);
        for (const Plan& shorter : std::vector<Plan>(all_)) {  // shortened and cleared
            if (!moves_an_end(shorter) || shorter.edits.size() > 2) continue;
            for (const Plan& cleared : {clear, unwanted}) {
                all_.push_back(cleared);
                all_.back().edits.insert(all_.back().edits.end(), shorter.edits.begin(), shorter.edits.end());
            }
        }
        all_.push_back(std::move(clear));
        for (const Wound& wound : after.wounds)
            if (wound.winter == after.winter && wound.beyond.count > 0) cut_again(wound);
        all_.push_back(farther_in_);
        clear_old_wood(facts);
        for (const auto* suckers : {&facts.suckers.left, &facts.suckers.stubs})
            for (const AxisId id : *suckers) cut_with_any(node_id(id, 0), Length{3'000});
    }
    const std::vector<Plan>& all() const { return all_; }
    bool old_wood_lies() const { return old_wood_lies_; }
    // Whether they cut again where old wood was cut, and all that is kept still stands: another cut beside it mends none.
    bool cut_again_only(const Plan& acts) const {
        const auto then = prune(after_, acts);
        if (!then) return false;
        for (const Axis& axis : then->axes)
            if (is_kept(axis.id) && (axis.removed || (axis.node_count > 1 && then->nodes_of(axis)[1].removed))) return false;
        return std::any_of(after_.wounds.begin() + static_cast<std::ptrdiff_t>(before_.wounds.size()), after_.wounds.end(), [&](const Wound& wound) {
            return wound.wood_age > 1 && (then->find(wound.node)->removed || std::any_of(then->wounds.begin() + static_cast<std::ptrdiff_t>(after_.wounds.size()), then->wounds.end(), [&](const Wound& later) { return later.node == wound.node; }));
        });
    }
    // Whether it moves an end of what is kept, with more or alone: the look back tells of ends by themselves.
    bool moves_an_end(const Plan& acts) const {
        return std::any_of(acts.edits.begin(), acts.edits.end(), [&](const Edit& edit) {
            const auto* cut = std::get_if<Cut>(&edit);
            return cut && index_of(cut->past) > 0 && is_kept(axis_of(cut->past));
        });
    }
    bool is_kept(AxisId id) const {
        return (kept_.left_cane && axis_of(kept_.left_cane) == id) || (kept_.right_cane && axis_of(kept_.right_cane) == id) ||
               kept_.left_spur == id || kept_.right_spur == id;
    }
    bool stands(const Axis& axis) const { return !axis.removed && axis.node_count > 1 && !after_.nodes_of(axis)[1].removed; }

private:
    void add(const planning::Choice& choice) {
        const Plan rest = planning::finish(before_, after_, mending_house, choice);
        if (!rest.edits.empty()) all_.push_back(rest);
        for (const Edit& edit : planning::complete(before_, mending_house, choice).edits)
            if (!std::holds_alternative<Mark>(edit) && !why_not(after_, edit)) all_.push_back({{edit}});
    }
    std::optional<Edit> cut_with_any(NodeId past, Length beyond) {
        for (const Tool tool : {Tool::shears, Tool::loppers, Tool::saw})
            if (const Edit cut = Cut{past, beyond, tool, {}}; !why_not(after_, cut)) {
                all_.push_back({{cut}});
                return cut;
            }
        return std::nullopt;
    }
    // Old wood that nothing kept needs, one by one and together.
    void clear_old_wood(const rules::PlanFacts& facts) {
        std::vector<AxisId> kept;
        for (const rules::SidePieces& side : facts.sides) {
            if (side.cane) kept.push_back(side.cane->axis);
            if (side.spur) kept.push_back(side.spur->axis);
            kept.insert(kept.end(), side.more_canes.begin(), side.more_canes.end());
            kept.insert(kept.end(), side.more_spurs.begin(), side.more_spurs.end());
        }
        Plan all;
        for (const rules::DueCut& due : rules::due_old_wood_cuts(before_, mending_house, kept))
            if (const auto cut = cut_with_any(due.past, due.beyond)) all.edits.push_back(*cut);
        all_.push_back(std::move(all));
    }
    void end_earlier(AxisId id) {
        const Axis& axis = *before_.find(id);
        for (const std::uint32_t node : ripe_count_nodes(before_, axis, mending_house.habits())) {
            const auto end = rules::canonical_end(before_, axis, node);
            const Edit cut = Cut{node_id(id, node), end.beyond, Tool::shears, {}};
            if (why_not(after_, cut)) continue;
            Plan plan{{cut}};
            for (const Laid& laid : after_.laid)
                if (laid.axis == id && laid.winter == after_.winter)
                    if (const auto tie = rules::canonical_tie(before_, mending_house, axis, course_of(before_, axis, laid.side), node))
                        plan.edits.push_back(*tie);
            all_.push_back(std::move(plan));
        }
    }
    // Another cane that still stands, at each length it can have, for the one that lies there.
    void lay_instead(AxisId id) {
        const Axis& axis = *before_.find(id);
        const auto nodes = ripe_count_nodes(before_, axis, mending_house.habits());
        for (const Side side : both_sides) {
            NodeId lies = side == Side::left ? kept_.left_cane : kept_.right_cane;
            if (before_.system == System::one_cane && !lies) lies = side == Side::left ? kept_.right_cane : kept_.left_cane;
            for (std::size_t n = 3; n < nodes.size(); n += 2) {
                const auto end = rules::canonical_end(before_, axis, nodes[n]);
                Plan plan, alone;  // for the one of its side; for all that lies
                if (lies) plan.edits.push_back(Cut{node_id(axis_of(lies), 0), Length{2'000}, Tool::shears, {}});
                for (const NodeId cane : {kept_.left_cane, kept_.right_cane})
                    if (cane) alone.edits.push_back(Cut{node_id(axis_of(cane), 0), Length{2'000}, Tool::shears, {}});
                for (Plan* p : {&plan, &alone}) {
                    p->edits.push_back(Cut{node_id(id, nodes[n]), end.beyond, Tool::shears, {}});
                    p->edits.push_back(Lay{id, side, 2});
                    if (const auto tie = rules::canonical_tie(before_, mending_house, axis, course_of(before_, axis, side), nodes[n]))
                        p->edits.push_back(*tie);
                    all_.push_back(std::move(*p));
                }
            }
        }
    }
    void cut_again(const Wound& wound) {
        std::optional<Edit> first;
        NodeId at = wound.node;  // farther in, also on what bears it
        for (const Axis* axis = before_.find(axis_of(at)); !is_trunk(*axis); at = axis->parent, axis = before_.find(axis_of(at)))
            for (std::uint32_t inside = 0; inside < index_of(at) + (at == wound.node ? 0 : 1); ++inside)
                for (const std::int32_t share : {2, 3, 4})
                    if (const auto cut = cut_with_any(node_id(axis->id, inside), Length{wound.major.count * share / 2 / 100 * 100}); cut && share == 3) first = first ? first : cut;
        if (first) farther_in_.edits.push_back(*first);
        for (const double share : {0.0, 0.5, 0.8, 1.0, 1.5}) {
            const auto wood = static_cast<std::int32_t>(wound.major.count * share) / 100 * 100;
            if (wood >= wound.beyond.count) continue;
            for (const Tool tool : {Tool::shears, Tool::loppers, Tool::saw}) {
                const Edit cut = Cut{wound.node, Length{wood}, tool, {}};
                if (!why_not(after_, cut)) all_.push_back({{cut}});
            }
        }
    }

    const Vine& before_;
    const Vine& after_;
    planning::Choice kept_;
    std::vector<Plan> all_;
    Plan farther_in_;  // of every cut of this winter
    bool old_wood_lies_ = false;
};

struct Mended {
    int vines = 0, told = 0, short_of = 0;  // "not lost yet"
    std::map<std::string, int> now, not_won, later, won;  // findings by rule
    std::string first_short, first_not_won, first_won;
};

class Mending {
public:
    Mended run(std::uint32_t count) {
        for (std::uint32_t number = 0; number < count; ++number) look_at(number);
        return std::move(found_);
    }

private:
    void look_at(std::uint32_t number) {
        number_ = number;
        const auto grown = growth::grow_vine(mending_site(number));
        if (!grown) return;
        const Vine& vine = *grown;
        const planning::Planning planning(vine, mending_house);
        const auto best = planning.best();
        if (!best) return;
        ++found_.vines;
        const test::Judged judged{vine, mending_house};
        const std::uint64_t seed = std::uint64_t{number} * 32;
        const auto pick = test::random_pick(planning.tables().tables, seed);
        Plan plan = number % 2 && pick ? planning::complete(vine, mending_house, planning::choice_of(planning.tables(), *pick)) : best->plan;
        const Plan bad = test::spoilt(vine, plan, seed + 1);
        if (prune(vine, bad)) plan = bad;
        const auto after = prune(vine, plan);
        const rules::Judgement mine = *judged(plan);
        const FurtherActs further(vine, *after, planning);
        try_not_lost_yet(vine, planning, judged, plan, mine);
        if (further.old_wood_lies()) return;  // what lies wrongly is not laid back
        try_findings(judged, plan, mine, further, nothing_else_stands(vine, *after, further));
    }

    static bool nothing_else_stands(const Vine& before, const Vine& after, const FurtherActs& further) {
        const auto canes = cane_candidates(before);
        return std::none_of(canes.begin(), canes.end(), [&](AxisId id) { return !further.is_kept(id) && further.stands(*after.find(id)); });
    }

    void try_not_lost_yet(const Vine& vine, const planning::Planning& planning, const test::Judged& judged, const Plan& plan,
                          const rules::Judgement& mine) {
        const planning::Charges charges = planning::charges(vine, mending_house, planning, plan, mine);
        if (!charges.mending || charges.mending->lost.count <= 0) return;
        ++found_.told;
        Plan whole = plan;
        for (const Edit& edit : planning::finish(vine, *prune(vine, plan), mending_house, charges.mending->better).edits)
            whole.edits.push_back(edit);
        const auto then = judged(whole);
        const Tenths gained = then ? then->points_before_caps - mine.points_before_caps : Tenths{-1};
        if (gained < charges.mending->lost && found_.short_of++ == 0)
            found_.first_short = std::to_string(number_) + ": " + std::to_string(gained.count) + " of " + std::to_string(charges.mending->lost.count) + ": " + print_plan(plan);
    }

    void try_findings(const test::Judged& judged, const Plan& plan, const rules::Judgement& mine, const FurtherActs& further, bool alone) {
        const bool single = judged.vine.system == System::one_cane;
        const Given had = given(mine, single);
        Given most = had, gained = had;  // by any act; by those that win more than they cost
        std::map<std::pair<rules::RuleName, Side>, Plan> by;
        for (const Plan& acts : further.all()) {
            Plan whole = plan;
            whole.edits.insert(whole.edits.end(), acts.edits.begin(), acts.edits.end());
            const auto then = judged(whole);
            if (!then) continue;
            const bool wins = then->points_before_caps > mine.points_before_caps && !further.moves_an_end(acts);
            for (const auto& [where, points] : given(*then, single)) {
                most[where] = std::max(most[where], points);
                if (!wins || points <= gained[where]) continue;
                if (where.first == rules::RuleName::old_wood_stub && !further.cut_again_only(acts)) continue;
                gained[where] = points, by[where] = acts;
            }
        }
        Given lost;
        std::set<std::pair<rules::RuleName, Side>> unlike;
        std::map<std::pair<rules::RuleName, Side>, rules::Mend> mend;
        std::map<std::pair<rules::RuleName, Side>, std::string_view> keys;
        for (const rules::Finding& f : mine.findings) {
            if (f.lost().count <= 0) continue;
            const auto where = place_of(f, single);
            lost[where] += f.lost();
            if (const auto [at, fresh] = mend.try_emplace(where, f.mend); !fresh && at->second != f.mend) unlike.insert(where);
            keys[where] = f.said.key.name;
        }
        for (const auto& [where, points] : lost) {
            if (unlike.contains(where)) continue;  // a cane's end and a missing spur's, told apart
            if (keys[where] == "rule.tying.over-bud") continue;  // a tie is moved by hand, but no act says so yet
            const std::string rule(rules::key_of(where.first));
            const bool now = mend[where] == rules::Mend::now;
            const Tenths left = points - ((now ? most : gained)[where] - had.at(where));
            const Tenths rounding{now ? 1 : 0};  // points are rounded down, before and after
            const bool back = left <= mending_house.acceptable.within + rounding;
            if (mend[where] == rules::Mend::now) {
                ++found_.now[rule];
                if (!back && found_.not_won[rule]++ < 3)
                    found_.first_not_won += "\n" + std::to_string(number_) + " " + std::string(keys[where]) + " " + rule + " " + std::to_string(points.count) + ", left " + std::to_string(left.count) + ": " + print_plan(plan);
            } else if (alone && points > mending_house.acceptable.within &&
                       (mend[where] == rules::Mend::next_winter || mend[where] == rules::Mend::carried)) {
                ++found_.later[rule];
                if (back && found_.won[rule]++ < 3)
                    found_.first_won += "\n" + std::to_string(number_) + " " + std::string(keys[where]) + " " + rule + " " + std::to_string(points.count) + " left " + std::to_string(left.count) + " by " + print_plan(by[where]) + " after " + print_plan(plan);
            }
        }
    }

    std::uint32_t number_ = 0;  // of the vine at hand
    Mended found_;
};

const Mended& mended() {
    static const Mended all = Mending().run(test::sized(500u, 10'000u));
    return all;
}

std::string by_rule(const std::map<std::string, int>& counts) {
    std::string text;
    for (const auto& [rule, n] : counts) text += rule + " " + std::to_string(n) + "; ";
    return text;
}
int in_all(const std::map<std::string, int>& counts) {
    int sum = 0;
    for (const auto& [rule, n] : counts) sum += n;
    return sum;
}

}  // namespace

TEST_SUITE("scenarios/mends") {
    TEST_CASE("not lost yet: done, it wins back what it says") {
        CAPTURE(mended().first_short);
        CHECK(mended().vines > test::sized(400, 8'000));
        CHECK(mended().told > test::sized(40, 800));
        // A tie falls with the end it holds, and a cane shortened lies a little otherwise: on one vine of 10,000 (4081) its new
        // end is 62 mm from the wire, farther than a tie reaches, and 1.8 of 2.6 points come back.
        CHECK(mended().short_of * 5'000 <= mended().vines);
    }
    TEST_CASE("mend now: some further act wins each loss back to within tolerance") {
        CAPTURE(mended().first_not_won);
        CAPTURE(by_rule(mended().now));
        CAPTURE(by_rule(mended().not_won));
        CHECK(mended().now.size() >= 8);
        CHECK(in_all(mended().now) > test::sized(200, 4'000));
        CHECK(in_all(mended().not_won) == 0);
    }
    TEST_CASE("next winter, and carried by the vine: where nothing else stands no further act wins the loss back") {
        CAPTURE(mended().first_won);
        CAPTURE(by_rule(mended().later));
        CAPTURE(by_rule(mended().won));
        CHECK(in_all(mended().later) > test::sized(100, 2'000));
        // Stubs are judged by the mean of all cuts: where a loss stands on the edge of what is as good, cutting one of them
        // again can bring it in (7 of 32,000 in 10,000 vines).
        CHECK(in_all(mended().won) * 1000 <= in_all(mended().later));
    }
}
