// show: what `grow` says, of a vine that exists.
#include "scenarios/commands/verbs.h"
#include "scenarios/commands/vine_answer.h"

namespace spurwright::commands {
namespace {

Result<Answer> answer_show(const Asked& asked, const Surroundings& around) {
    const auto found = find_vine(asked.subject);
    if (!found) return failure(found.error());
    return vine_answer(*found, around.words);
}

} // namespace

Verb show_verb() { return {"show", "CODE|FILE", TextKey{"verb.show"}, {}, answer_show}; }

} // namespace spurwright::commands
