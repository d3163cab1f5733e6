#include "scenarios/practice/ladder_vine.h"

#include <algorithm>
#include <array>

#include "sim/core/check.h"
#include "sim/planning/held_plan.h"
#include "sim/pruning/legal_edits.h"

namespace spurwright::practice {
namespace {

using rules::Mend;
using rules::Step;

constexpr std::size_t spoken_of_at_once = 3;  // where the words still explain each step: our choice
constexpr Tenths least_spoken_of{10};         // under one point: folded, as in every look back

// Spares come off once the canes are tied: with the tying.
bool after_tying(const std::vector<WatchedAct>& acts, std::size_t at) {
    return std::any_of(acts.begin(), acts.begin() + static_cast<std::ptrdiff_t>(at), [](const WatchedAct& act) { return act.edit && std::holds_alternative<Lay>(*act.edit); });
}

// The step whose fault holds the points down.
Step step_lost_in(const rules::Cap& cap) {
    static constexpr std::array<std::string_view, 2> clearing{"trunk-cut", "old-cane-left"};
    if (cap.cap == "overloaded") return Step::lengths;
    return std::find(clearing.begin(), clearing.end(), cap.cap) != clearing.end() ? Step::clear : Step::choose;
}

Step step_lost_in(const planning::Charge& charge, const std::vector<bool>& shown) {
    return charge.edit < shown.size() && shown[charge.edit] ? Step::choose : charge.step;
}

// The step a share of a finding's loss belongs to; none of what the best plan loses too.
std::optional<Step> step_lost_in(const planning::FindingShare& share, const planning::Charges& charges, const rules::Finding& finding, const std::vector<bool>& shown) {
    using planning::LostTo;
    switch (share.to) {
        case LostTo::vine: return std::nullopt;
        case LostTo::act:
            for (const auto* list : {&charges.edits, &charges.even})
                for (const planning::Charge& charge : *list)
                    if (charge.edit == share.edit) return step_lost_in(charge, shown);
            return finding.step;
        case LostTo::open: return charges.mending ? charges.mending->step : finding.step;
        case LostTo::hand: return finding.step;
    }
    return std::nullopt;
}

bool stands_in(const std::vector<rules::Cap>& caps, const rules::Cap& cap) {
    return std::any_of(caps.begin(), caps.end(), [&](const rules::Cap& other) { return other.cap == cap.cap; });
}

// What of a stop of the walk is the trainee's; before the plans are found by the rule's own step.
Tenths yours_of(const Walked& stop, const lessons::Rung& rung, const YoursOnVine* yours) {
    if (stop.stop != Stop::finding) return {};
    if (!yours) return rung.is_mine(stop.step) ? stop.lost : Tenths{};
    Tenths lost = yours->of_findings[stop.at];
    for (const std::size_t with : stop.with) lost += yours->of_findings[with];
    return lost;
}

}  // namespace

ShownRest shown_rest(const Vine& start, const Vine& now, const Plan& done, const rules::HouseRules& house, const lessons::Rung& rung) {
    ShownRest rest;
    if (rung.whole()) return rest;
    auto held = planning::best_holding(start, house, planning::vine_tables(start, house), now);
    if (!held) return rest;
    rest.not_held = std::move(held->not_held);
    Plan whole = done;
    whole.edits.insert(whole.edits.end(), held->rest.edits.begin(), held->rest.edits.end());
    if (!prune(start, whole)) return rest;  // more acts than a plan may hold
    const std::vector<WatchedAct> acts = watched_acts(start, house, whole);  // looking first, then the acts done
    for (std::size_t i = done.edits.size() + 1; i < acts.size(); ++i) {
        WatchedAct act = acts[i];
        if (after_tying(acts, i)) act.step = Step::lay_and_tie;
        if (!rung.is_mine(act.step)) rest.acts.push_back(std::move(act));
    }
    std::stable_sort(rest.acts.begin(), rest.acts.end(), [](const WatchedAct& one, const WatchedAct& other) { return one.step < other.step; });
    // What waits for a step of the trainee's own is left out: its time comes with that step.
    Vine hand = now;
    std::erase_if(rest.acts, [&](const WatchedAct& act) { return why_not(hand, *act.edit) || !prune_one(hand, *act.edit, start); });
    return rest;
}

Tenths YoursOnVine::lost() const {
    Tenths all;
    for (const records::StepResult& step : steps) all += step.lost;
    return all;
}

YoursOnVine yours_on(const LookBack& look, const lessons::Rung& rung, const std::vector<bool>& shown) {
    SPURWRIGHT_CHECK(look.charged.has_value(), ==, true);
    YoursOnVine yours;
    std::array<Tenths, 7> now{};
    const planning::Charges& charges = look.charged->charges;
    std::array<Tenths, 7> lost{};
    for (std::size_t i = 0; i < look.mine.findings.size(); ++i) {
        const rules::Finding& finding = look.mine.findings[i];
        Tenths here;
        for (const planning::FindingShare& share : look.charged->shares[i]) {
            const auto step = step_lost_in(share, charges, finding, shown);
            if (!step || !rung.is_mine(*step)) continue;
            here += share.lost;
            lost[static_cast<std::size_t>(*step)] += share.lost;
            if (finding.mend == Mend::now && share.lost.count > 0) now[static_cast<std::size_t>(*step)] += share.lost;
        }
        yours.of_findings.push_back(here);
    }
    std::array<bool, 7> capped{};
    for (const rules::Cap& cap : look.mine.caps) {
        const Step step = step_lost_in(cap);
        const bool mine = rung.is_mine(step) && !(look.best && stands_in(look.best->caps, cap));
        yours.of_caps.push_back(mine);
        if (mine) capped[static_cast<std::size_t>(step)] = true;
    }
    for (std::size_t i = 0; i < lost.size(); ++i)
        if (rung.mine[i]) yours.steps.push_back({static_cast<Step>(i), lost[i], now[i], capped[i]});
    return yours;
}

void fold_to_yours(LookBack& look, const lessons::Rung& rung, const std::vector<bool>& shown) {
    std::optional<YoursOnVine> yours;
    if (look.charged) yours = yours_on(look, rung, shown);
    std::vector<std::pair<Tenths, std::size_t>> spoken;
    for (std::size_t i = 0; i < look.walk.size(); ++i) {
        Walked& stop = look.walk[i];
        if (stop.stop == Stop::cap) {
            stop.folded = yours ? !yours->of_caps[stop.at] : !rung.is_mine(step_lost_in(look.mine.caps[stop.at]));
            continue;
        }
        const Tenths lost = yours_of(stop, rung, yours ? &*yours : nullptr);
        stop.folded = lost < least_spoken_of;
        if (!stop.folded) spoken.emplace_back(lost, i);
    }
    if (!rung.explained) return;
    std::stable_sort(spoken.begin(), spoken.end(), [](const auto& one, const auto& other) { return one.first > other.first; });
    for (std::size_t i = spoken_of_at_once; i < spoken.size(); ++i) look.walk[spoken[i].second].folded = true;
}

}  // namespace spurwright::practice
