// prune: carries out a plan and writes the vine after it.
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/vine_source.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::commands {
namespace {

Result<Answer> answer_prune(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    auto pruned = prune_by_text(found->vine, *asked.value("--plan"));
    if (!pruned) return failure(std::move(pruned.error()));
    io::VineFile file;
    file.vine = std::move(pruned->after);
    file.pruned_from = vine_hash(found->vine);
    file.plan = print_plan(pruned->plan);
    const std::string path = *asked.value("-o");
    if (auto written = io::save_vine_file(path, file); !written) return failure(std::move(written.error()));
    Answer answer;
    answer.object.set("file", path);
    answer.object.set("hash", hash_text(vine_hash(file.vine)));
    answer.object.set("pruned_from", hash_text(*file.pruned_from));
    answer.object.set("plan", file.plan);
    answer.text = around.words("prune.done",
                               {{"file", path}, {"n", Count{static_cast<std::int64_t>(pruned->plan.edits.size())}}}) +
                  "\n";
    return answer;
}

} // namespace

Verb prune_verb() {
    return {"prune",
            "CODE|FILE",
            TextKey{"verb.prune"},
            {{"--plan", "TEXT", TextKey{"option.plan"}, true}, {"-o", "FILE", TextKey{"option.output"}, true}},
            answer_prune};
}

} // namespace spurwright::commands
