#include "scenarios/commands/judged.h"

#include <algorithm>

#include "sim/planning/cordon.h"
#include "sim/planning/first_pass_plan.h"
#include "sim/rules/first_pass.h"

namespace spurwright::commands {

Result<void> can_be_judged(const Vine& vine, const std::string& subject) {
    if (const auto why = rules::why_not_judged(vine))
        return failure({Fault::not_allowed, *why, {}, {subject, 0, 0, 0}});
    return must_be_uncut(vine, subject);
}

Result<void> is_for_this_system(const Vine& before, const Plan& plan, const Vine& after) {
    const auto lies_whole = [&](AxisId cane) {
        const auto nodes = after.nodes_of(*after.find(cane));
        return nodes.size() > 1 && !nodes[1].removed && std::any_of(after.laid.begin(), after.laid.end(), [&](const Laid& laid) {
            return laid.axis == cane && laid.winter == after.winter && laid.state != LaidState::snapped;
        });
    };
    int laid = 0;
    for (std::size_t i = 0; i < plan.edits.size(); ++i) {
        const auto* lay = std::get_if<Lay>(&plan.edits[i]);
        if (!lay) continue;
        const bool on_cordon = before.system == System::cordon;
        laid += lies_whole(lay->cane);
        const bool second = before.system == System::one_cane && laid > 1 && lies_whole(lay->cane);
        if (on_cordon || second)
            return failure({Fault::not_allowed,
                            {on_cordon ? "error.plan.other-system" : "error.plan.second-cane"},
                            {{"part", lay->cane}},
                            {"plan", 0, 0, static_cast<int>(i) + 1}});
    }
    return {};
}

Result<bool> first_pass_asked(const Asked& asked, const Vine& vine) {
    const auto pass = asked.value("--pass");
    if (!pass) return false;
    if (*pass != "first") return failure(refusal(Fault::bad_text, "error.pass.word", {{"text", *pass}}, "--pass"));
    if (vine.system != System::cordon) return failure(refusal(Fault::not_allowed, "error.pass.cordon", {}, "--pass"));
    return true;
}

VerbOption pass_option() { return {"--pass", "first", TextKey{"option.pass"}}; }

Result<Judged> judged_first_pass(const Vine& before, const Plan& plan, const rules::HouseRules& house) {
    const auto after = prune(before, plan);
    if (!after) return failure(after.error());
    const auto careful = prune(before, planning::first_pass_plan(before, house));
    if (!careful) return failure(careful.error());
    return Judged{plan, rules::judge_first_pass(before, *after, house), {}, rules::judge_first_pass(before, *careful, house).points};
}

Result<Judged> judged_cordon(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                             const std::optional<rules::Report>& report) {
    const auto after = prune(before, plan);
    if (!after) return failure(after.error());
    const rules::Offers offers = rules::offers(before, house);
    Judged result{plan, rules::judge_plan(before, plan, *after, house, offers, rules::asked(offers, house), report), {}, {}};
    const planning::CordonTables tables = planning::cordon_tables(before, house);
    result.tally = planning::tally(tables, result.judgement.points.count);
    result.best = Tenths{planning::best_pick(tables).points};
    return result;
}

Result<Judged> judged(const Vine& before, const Plan& plan, const rules::HouseRules& house,
                      const planning::Planning& planning, const std::optional<rules::Report>& report) {
    const auto after = prune(before, plan);
    if (!after) return failure(after.error());
    const rules::Offers offers = rules::offers(before, house);
    Judged result{plan, rules::judge_plan(before, plan, *after, house, offers, rules::asked(offers, house), report), {}, {}};
    result.tally = planning.count(result.judgement.points);
    if (const auto best = planning.best()) result.best = best->points;
    return result;
}

} // namespace spurwright::commands
