// judge: what a plan is worth by the house rules, why, and where it stands among all plans the vine offers.
#include "scenarios/commands/house_rules_option.h"
#include "scenarios/commands/judged.h"
#include "scenarios/commands/judgement_text.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/report_file.h"
#include "scenarios/words/layout.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

std::string text_of(const Judged& judged, std::string_view rank, const words::Words& words) {
    std::string out;
    if (judged.best) {
        out += words("judge.points", {{"points", judged.judgement.points}, {"best", *judged.best}}) + "\n";
        if (!rank.empty()) out += words::wrapped(words(rank, {{"counted", Count{static_cast<std::int64_t>(judged.tally.counted)}},
                                                   {"better", Count{static_cast<std::int64_t>(judged.tally.better)}},
                                                   {"equal", Count{static_cast<std::int64_t>(judged.tally.equal)}}}));
    } else {
        out += words("judge.no-best", {{"points", judged.judgement.points}}) + "\n";
    }
    return out + "\n" + judgement_text(judged.judgement, words) + "\n" + words::wrapped(words("safety.line"));
}

Result<Answer> answer_judge(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    auto house = house_rules_asked(asked, around, found->vine.system);
    if (!house) return failure(house.error());
    std::optional<rules::Report> report;
    if (const auto file = asked.value("--report")) {
        const auto read = io::load_report(*file);
        if (!read) return failure(read.error());
        report = read->report;
        house->rules.prunings_weighed.asked = true;
    }
    if (auto fine = can_be_judged(found->vine, asked.subject); !fine) return failure(std::move(fine.error()));
    const auto pruned = prune_by_text(found->vine, *asked.value("--plan"));
    if (!pruned) return failure(pruned.error());
    if (auto meant = is_for_this_system(found->vine, pruned->plan, pruned->after); !meant) return failure(meant.error());
    const bool cordon = found->vine.system == System::cordon;
    const auto first_pass = first_pass_asked(asked, found->vine);
    if (!first_pass) return failure(first_pass.error());
    const auto result = *first_pass ? judged_first_pass(found->vine, pruned->plan, house->rules)
                        : cordon ? judged_cordon(found->vine, pruned->plan, house->rules, report)
                               : judged(found->vine, pruned->plan, house->rules,
                                        planning::Planning(found->vine, house->rules), report);
    if (!result) return failure(result.error());
    Answer answer;
    io::Json& o = answer.object;
    o.set("code", found->code.empty() ? io::Json() : io::Json(found->code));
    o.set("hash", hash_text(vine_hash(found->vine)));
    o.set("plan", print_plan(pruned->plan));
    o.set("best_points", result->best ? io::Json(*result->best) : io::Json());
    o.set("plans_counted", result->tally.counted);
    o.set("plans_better", result->tally.better);
    o.set("plans_equal", result->tally.equal);
    set_judgement(o, result->judgement, around.words);
    o.set("rule_set", house->name);
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(house->rules)));
    o.set("judge_version", rules::judge_version);
    o.set("language", around.words.language());
    answer.text = text_of(*result, *first_pass ? "" : cordon ? "judge.cordon-rank" : "judge.rank", around.words);
    return answer;
}

} // namespace

Verb judge_verb() {
    return {"judge",
            "CODE|FILE",
            TextKey{"verb.judge"},
            {{"--plan", "TEXT", TextKey{"option.plan"}, true}, {"--report", "FILE", TextKey{"option.report"}}, pass_option(), rules_option()},
            answer_judge};
}

} // namespace spurwright::commands
