#include "scenarios/practice/look_back.h"

#include <algorithm>
#include <array>

#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

constexpr Tenths too_little{10};  // under one point: folded (our choice)

// Where along its piece a rule is looked at, from the head outward.
enum class Near : unsigned char { crown, middle, tip, whole };

constexpr Near near(rules::RuleName rule) {
    using rules::RuleName;
    switch (rule) {
    case RuleName::origin_distance:
    case RuleName::origin_height:
    case RuleName::cane_side:
    case RuleName::wood_age:
    case RuleName::cane_count:
    case RuleName::spur_count:
    case RuleName::spur_place:
    case RuleName::old_wood_stub:
    case RuleName::suckers: return Near::crown;
    case RuleName::cane_diameter:
    case RuleName::internode_length:
    case RuleName::internode_evenness:
    case RuleName::cane_health:
    case RuleName::spur_size:
    case RuleName::spur_direction:
    case RuleName::spur_buds: return Near::middle;
    case RuleName::cane_end_diameter:
    case RuleName::cane_reach:
    case RuleName::end_cut:
    case RuleName::tying: return Near::tip;
    case RuleName::bud_load:
    case RuleName::wound_size:
    case RuleName::tool_choice:
    case RuleName::wood_left_behind:
    case RuleName::kicker_kept:
    case RuleName::kicker_absent:
    case RuleName::bud_kill_adjust:
    case RuleName::prunings_weighed: return Near::whole;
    }
    return Near::whole;
}

NodeId node_near(const Vine& vine, AxisId id, Near where) {
    const Axis* axis = vine.find(id);
    if (!axis) return {};
    std::uint32_t outermost = 0;
    for (const Node& node : vine.nodes_of(*axis))
        if (!node.removed) outermost = index_of(node.id);
    return node_id(id, where == Near::tip ? outermost : where == Near::middle ? std::min<std::uint32_t>(2, outermost) : 0);
}

// The axis a part's name means; none for totals and for names of other tables.
AxisId axis_named(const Vine& vine, const std::string& name) {
    AxisId id;
    if (const auto axis = read_axis(name)) id = *axis;
    else if (const auto node = read_node(name)) id = axis_of(*node);
    return vine.find(id) ? id : AxisId{};
}

Walked stop_of(const Vine& before, const Vine& after, const rules::Finding& f, Stop stop, std::size_t at) {
    Walked w;
    w.stop = stop;
    w.at = at;
    w.axis = axis_named(before, f.on);
    w.node = node_near(after, w.axis, near(f.rule->name));
    if (f.said.key.name == "rule.tying.skin-crack")  // where it was bent most, not where it is tied
        for (const Laid& laid : after.laid)
            if (laid.axis == w.axis && laid.winter == after.winter) w.node = laid.worst;
    w.side = f.side;
    w.lost = f.lost();
    w.mend = f.mend;
    w.step = f.step;
    w.key = f.said.key;
    w.arguments = f.said.arguments;
    w.folded = w.lost < too_little;
    return w;
}

// From the head along the near-post side, then the far-post side, then the vine as a whole.
std::array<int, 3> place_in_walk(const rules::Judgement& judgement, const Walked& w) {
    const rules::Finding& f = w.stop == Stop::remark ? judgement.remarks[w.at] : judgement.findings[w.at];
    const int side = w.side == Side::left ? 0 : w.side == Side::right ? 1 : 2;
    const int piece = f.rule->per == rules::Per::spur ? 0 : f.rule->per == rules::Per::cane_and_spur ? 1 : 2;
    return {side, piece, static_cast<int>(near(f.rule->name))};
}

std::optional<Vine> pruned(const Vine& before, const Plan& plan) {
    auto after = prune(before, plan);
    if (!after) return std::nullopt;
    return *std::move(after);
}

Twin twin_of(const Vine& after, const Axis& axis, Side side, bool spur) {
    Twin twin{axis.id, {}, side, spur, {}};
    for (const Node& node : after.nodes_of(axis)) {
        if (node.removed) break;
        twin.places.push_back(node.place);
        twin.last = node.id;
    }
    return twin;
}

}  // namespace

LookBack look_back(const Vine& before, const Vine& after, const rules::HouseRules& house) {
    LookBack look;
    look.mine = rules::judge(before, after, house);
    for (std::size_t i = 0; i < look.mine.caps.size(); ++i) {
        const rules::Cap& cap = look.mine.caps[i];
        Walked w;
        w.stop = Stop::cap;
        w.at = i;
        w.axis = axis_named(before, cap.on);
        w.node = node_near(after, w.axis, Near::crown);
        if (const Axis* axis = before.find(w.axis)) w.side = axis->side;
        w.mend = rules::Mend::carried;
        w.step = rules::Step::choose;
        w.key = cap.key;
        w.arguments = cap.arguments;
        look.walk.push_back(std::move(w));
    }
    std::vector<Walked> rest;
    for (std::size_t i = 0; i < look.mine.findings.size(); ++i) rest.push_back(stop_of(before, after, look.mine.findings[i], Stop::finding, i));
    for (std::size_t i = 0; i < look.mine.remarks.size(); ++i) rest.push_back(stop_of(before, after, look.mine.remarks[i], Stop::remark, i));
    std::stable_sort(rest.begin(), rest.end(), [&](const Walked& a, const Walked& b) { return place_in_walk(look.mine, a) < place_in_walk(look.mine, b); });
    for (Walked& w : rest) look.walk.push_back(std::move(w));
    for (std::size_t s = 0; s < rules::words_of(rules::Step{}).size(); ++s) {
        StepLoss loss{static_cast<rules::Step>(s), {}, 0};
        for (const rules::Finding& f : look.mine.findings) {
            if (f.step != loss.step || f.lost().count <= 0) continue;
            loss.lost += f.lost();
            ++loss.findings;
        }
        if (loss.findings > 0) look.by_step.push_back(loss);
    }
    look.current = look.walk.size();
    return look;
}

void add_plans(LookBack& look, const Vine& before, const rules::HouseRules& house, PlansFound plans) {
    look.twins.clear();
    look.tally = plans.planning->count(look.mine.points);
    for (const planning::BestPlan& plan : plans.as_good) look.twins.push_back(twins_of(before, plan.plan));
    if (!plans.none()) {
        if (const auto after = pruned(before, plans.best().plan)) look.best = rules::judge(before, *after, house);
        look.mine_as_good = look.mine.points + plans.tolerance >= plans.best().points;
    }
    look.plans = std::move(plans);
}

std::vector<Twin> twins_of(const Vine& before, const Plan& plan) {
    std::vector<Twin> twins;
    const auto after = pruned(before, plan);
    if (!after) return twins;
    for (const Edit& edit : plan.edits) {
        if (const auto* lay = std::get_if<Lay>(&edit)) twins.push_back(twin_of(*after, *after->find(lay->cane), lay->side, false));
        const auto* mark = std::get_if<Mark>(&edit);
        if (mark && mark->role == Role::spur) twins.push_back(twin_of(*after, *after->find(mark->axis), after->find(mark->axis)->side, true));
    }
    return twins;
}

std::vector<Twin> twins_for(const LookBack& look, const Walked& stop, const std::vector<Twin>& twins) {
    std::optional<rules::Per> per;
    if (stop.stop == Stop::finding) per = look.mine.findings[stop.at].rule->per;
    if (stop.stop == Stop::remark) per = look.mine.remarks[stop.at].rule->per;
    std::vector<Twin> found;
    for (const Twin& twin : twins) {
        if (stop.side != Side::none && twin.side != stop.side) continue;
        if (per == rules::Per::cane && twin.spur) continue;
        if (per == rules::Per::spur && !twin.spur) continue;
        found.push_back(twin);
    }
    return found;
}

}  // namespace spurwright::practice
