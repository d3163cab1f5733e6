#include "scenarios/commands/judged.h"

namespace spurwright::commands {

Result<void> can_be_judged(const Vine& vine, const std::string& subject) {
    if (const auto why = rules::why_not_judged(vine))
        return failure({Fault::not_allowed, *why, {}, {subject, 0, 0, 0}});
    return must_be_uncut(vine, subject);
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
