#include "scenarios/quiz/losses.h"

#include "sim/core/check.h"
#include "sim/rules/judge.h"

namespace spurwright::quiz {

const rules::Finding* largest_loss(const rules::Judgement& judgement, const std::string& on) {
    const rules::Finding* most = nullptr;
    for (const rules::Finding& finding : judgement.findings) {
        if (finding.lost().count <= 0 || (!on.empty() && finding.on != on)) continue;
        if (!most || finding.lost() > most->lost()) most = &finding;
    }
    return most;
}

Told told(const rules::Finding* finding) {
    if (!finding) return {};
    return {finding->said.key, finding->said.arguments};
}

rules::Judgement judged(const Vine& vine, const Plan& plan, const rules::HouseRules& house) {
    const auto after = prune(vine, plan);
    SPURWRIGHT_CHECK(after.has_value(), ==, true);  // plans made here are legal
    return rules::judge(vine, *after, house);
}

}  // namespace spurwright::quiz
