#include "scenarios/practice/look_back.h"

#include <algorithm>
#include <array>

#include "sim/rules/missing_piece.h"
#include "sim/rules/say.h"
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

// A missing piece is told once, not by every rule that would have judged it.
void add_finding(std::vector<Walked>& stops, const rules::Judgement& mine, Walked stop) {
    const auto is_spur = [&](std::size_t at) {
        const rules::Finding& f = mine.findings[at];
        return f.rule->per == rules::Per::spur || f.said.key.name == "rule.end-cut.missing-spur" || f.said.key.name == "rule.spur-row.missing";
    };
    const rules::Finding& f = mine.findings[stop.at];
    const auto same = std::find_if(stops.begin(), stops.end(), [&](const Walked& other) {
        return rules::tells_missing(f) && stop.lost.count > 0 && other.lost.count > 0 && rules::tells_missing(mine.findings[other.at]) && other.side == stop.side && is_spur(other.at) == is_spur(stop.at);
    });
    if (same == stops.end()) return stops.push_back(std::move(stop));
    same->with.push_back(stop.at);
    same->lost += stop.lost;
    same->folded = same->lost < too_little;
    const bool in_row = f.said.key.name == "rule.spur-row.missing";
    same->key = TextKey{in_row ? "review.missing-in-row" : is_spur(stop.at) ? "review.missing-spur" : "review.missing-cane"};
    std::erase_if(same->arguments, [](const Named& named) { return named.gap == "rules"; });
    if (!in_row) same->arguments = {{"side", rules::side_key(stop.side)}};
    same->arguments.push_back({"rules", Count{static_cast<std::int64_t>(same->with.size()) + 1}});
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
        w.mend = rules::Mend::carried;  // until it is known to be work left undone
        w.step = rules::Step::choose;
        w.key = cap.key;
        w.arguments = cap.arguments;
        look.walk.push_back(std::move(w));
    }
    std::vector<Walked> rest;
    for (std::size_t i = 0; i < look.mine.findings.size(); ++i) add_finding(rest, look.mine, stop_of(before, after, look.mine.findings[i], Stop::finding, i));
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

void add_plans(LookBack& look, const Vine& before, const rules::HouseRules& house, PlansFound plans, const Plan& done) {
    look.twins.clear();
    look.tally = plans.tally(look.mine.points);
    for (const planning::BestPlan& plan : plans.as_good) look.twins.push_back(twins_of(before, plan.plan));
    if (!plans.none()) {
        if (const auto after = pruned(before, plans.best().plan)) look.best = rules::judge(before, *after, house);
        look.mine_as_good = look.mine.points + plans.tolerance >= plans.best().points;
        if (look.mine_as_good)  // nobody is shown as a fault what nobody can tell apart, unless it can still be done
            for (Walked& stop : look.walk) stop.folded = stop.folded || (stop.stop == Stop::finding && stop.mend != rules::Mend::now);
        look.charged = charged_look(before, house, plans, done, look.mine);
        look.charged->caps = planning::charged_caps(before, house, done, look.mine, look.best ? look.best->caps : std::vector<rules::Cap>{});
        for (Walked& stop : look.walk)
            if (stop.stop == Stop::cap && look.charged->caps[stop.at].to == planning::LostTo::open) stop.mend = rules::Mend::now;
    }
    look.plans = std::move(plans);
}

std::optional<planning::FindingShare> charged_to(const LookBack& look, const Walked& stop) {
    if (!look.charged || stop.stop != Stop::finding || stop.lost.count <= 0) return std::nullopt;
    planning::FindingShares all;
    const auto add = [&](std::size_t finding) {
        for (const planning::FindingShare& share : look.charged->shares[finding]) {
            const auto same = std::find_if(all.begin(), all.end(), [&](const planning::FindingShare& other) { return other.to == share.to && other.edit == share.edit; });
            if (same == all.end()) all.push_back(share);
            else same->lost += share.lost;
        }
    };
    add(stop.at);
    for (const std::size_t finding : stop.with) add(finding);
    const planning::FindingShare* most = planning::most_of(all);
    return most ? std::optional(*most) : std::nullopt;
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
