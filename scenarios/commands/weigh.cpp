// weigh: what a plan takes off and what it keeps, by age of wood.
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/vine_source.h"
#include "sim/pruning/prunings.h"

namespace spurwright::commands {
namespace {

Mass mass_of(double mg) { return {rounded(mg)}; }

Result<Answer> answer_weigh(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    const auto pruned = prune_by_text(found->vine, *asked.value("--plan"));
    if (!pruned) return failure(pruned.error());
    const Prunings p = prunings(found->vine, pruned->after);
    const Mass one_year = mass_of(p.removed.one_year_mg), older = mass_of(p.removed.older_mg),
               kept = mass_of(p.kept.one_year_mg);
    const PerMille share{p.one_year_nodes > 0 ? rounded(1000.0 * p.one_year_nodes_removed / p.one_year_nodes) : 0};
    Answer answer;
    answer.object.set("one_year_removed_g", one_year);
    answer.object.set("older_removed_g", older);
    answer.object.set("one_year_kept_g", kept);
    answer.object.set("one_year_nodes_removed_share", share);
    const words::Words& words = around.words;
    answer.text = words("weigh.one-year-removed", {{"mass", one_year}}) + "\n" +
                  words("weigh.older-removed", {{"mass", older}}) + "\n" +
                  words("weigh.one-year-kept", {{"mass", kept}}) + "\n" +
                  words("weigh.nodes-removed", {{"share", share}}) + "\n";
    return answer;
}

} // namespace

Verb weigh_verb() {
    return {"weigh", "CODE|FILE", TextKey{"verb.weigh"}, {{"--plan", "TEXT", TextKey{"option.plan"}, true}}, answer_weigh};
}

} // namespace spurwright::commands
