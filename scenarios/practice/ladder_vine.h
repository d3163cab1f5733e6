// A vine on a rung of the ladder: whose each step is, what goes with the trainee's own choice, and what came of the steps that
// were theirs. Must not know: who stands on which rung, screens, sentences.
#pragma once

#include <vector>

#include "scenarios/lessons/lesson_file.h"
#include "scenarios/practice/look_back.h"
#include "scenarios/practice/watched_acts.h"
#include "scenarios/records/lesson_record.h"
#include "sim/pruning/plan.h"

namespace spurwright::practice {

struct OnRung {
    int number = 0;          // of the rung, from 0
    lessons::Rung rung;
    lessons::Lesson lesson;  // whose words explain each step
};

// What is done for the trainee: the rest of the best plan that goes with their tapes and cuts (planning/held_plan.h), told as
// a watched vine is; only steps that are not theirs, in the order of work.
struct ShownRest {
    std::vector<WatchedAct> acts;  // each legal after those before it
    std::vector<AxisId> not_held;  // taped, and left out of account
};
ShownRest shown_rest(const Vine& start, const Vine& now, const Plan& done, const rules::HouseRules& house, const lessons::Rung& rung);

// What of a look back is the trainee's: against the best plan, by the choice that made each loss unavoidable. A loss by an act
// done for them goes back to the choice that it went with.
struct YoursOnVine {
    std::vector<records::StepResult> steps;  // own steps in the order of work
    std::vector<Tenths> of_findings;         // beside the judgement's findings
    std::vector<bool> of_caps;               // beside its caps
    Tenths lost() const;
};
// `look` has its plans; `shown` stands beside the plan's edits.
YoursOnVine yours_on(const LookBack& look, const lessons::Rung& rung, const std::vector<bool>& shown);

// Folds what is not the trainee's, and all but the three that cost most where the words still explain each step.
void fold_to_yours(LookBack& look, const lessons::Rung& rung, const std::vector<bool>& shown);

}  // namespace spurwright::practice
