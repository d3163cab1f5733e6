// job: the first scene once, by a beginner and by the best plan.
#include "scenarios/commands/job.h"

#include "scenarios/commands/judgement_text.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/house_rules_file.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/scenes/beginner.h"
#include "scenarios/scenes/scene_file.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

io::Json judged_object(const Judged& judged, const words::Words& words) {
    io::Json o = io::Json::object();
    o.set("plan", print_plan(judged.plan));
    o.set("plans_better", judged.tally.better);
    o.set("plans_equal", judged.tally.equal);
    set_judgement(o, judged.judgement, words);
    return o;
}

// The report, the vine's code and both plans, each a file of its own: what pictures of the job are drawn from.
Result<void> keep(const Job& job, const std::string& report, const std::string& folder) {
    const std::pair<const char*, std::string> files[] = {{"report.txt", report},
                                                         {"vine.txt", job.found.code + "\n"},
                                                         {"beginner-plan.txt", print_plan(job.beginner.plan) + "\n"},
                                                         {"best-plan.txt", print_plan(job.best.plan) + "\n"}};
    for (const auto& [name, text] : files)
        if (auto written = io::write_file(folder + "/" + name, text); !written) return written;
    return {};
}

Result<Answer> answer_job(const Asked& asked, const Surroundings& around) {
    std::int64_t number = 1;
    if (const auto text = asked.value("--vine")) {
        const auto read = read_whole(*text, "--vine", 1, 5);
        if (!read) return failure(read.error());
        number = *read;
    }
    const auto job = first_job(around, static_cast<std::size_t>(number));
    if (!job) return failure(job.error());
    Answer answer;
    answer.object.set("scene", "first");
    answer.object.set("code", job->found.code);
    answer.object.set("hash", hash_text(vine_hash(job->found.vine)));
    answer.object.set("plans_counted", job->best.tally.counted);
    answer.object.set("beginner", judged_object(job->beginner, around.words));
    answer.object.set("best", judged_object(job->best, around.words));
    answer.object.set("rule_set", job->house);
    answer.object.set("rule_set_hash", hash_text(rules::rule_set_hash(job->rules)));
    answer.object.set("judge_version", rules::judge_version);
    answer.object.set("language", around.words.language());
    answer.text = job_text(*job, around.words);
    if (const auto folder = asked.value("--folder")) {
        if (auto kept = keep(*job, answer.text, *folder); !kept) return failure(std::move(kept.error()));
        answer.object.set("folder", *folder);
    }
    return answer;
}

} // namespace

Result<Job> first_job(const Surroundings& around, std::size_t number) {
    auto scene = scenes::load_scene(around.assets, "first");
    if (!scene) return failure(std::move(scene.error()));
    auto house = io::load_house_rules(scene->house_rules, around.assets);
    if (!house) return failure(std::move(house.error()));
    auto found = vine_of_code(scene->vines.at(std::min(number, scene->vines.size()) - 1).code);
    if (!found) return failure(std::move(found.error()));
    const planning::Planning planning(found->vine, house->rules);
    const auto best = planning.best();
    if (!best) return failure(refusal(Fault::bad_file, "best.none", {}, "first"));
    auto best_judged = judged(found->vine, best->plan, house->rules, planning);
    if (!best_judged) return failure(std::move(best_judged.error()));
    auto beginner = judged(found->vine, scenes::beginners_plan(found->vine, scene->beginner), house->rules, planning);
    if (!beginner) return failure(std::move(beginner.error()));
    return Job{*std::move(found),       house->name,  *std::move(beginner),
               *std::move(best_judged), house->rules, scene->learn_keys};
}

Verb job_verb() {
    return {"job",
            "",
            TextKey{"verb.job"},
            {{"--vine", "1-5", TextKey{"option.vine"}}, {"--folder", "FOLDER", TextKey{"option.folder"}}},
            answer_job};
}

} // namespace spurwright::commands
