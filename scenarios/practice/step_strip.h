// The strip of steps: what has been done of each by the trainee's own tapes and cuts, and what comes next. It never
// blocks and never judges: it counts acts, not faults. Must not know: rules' marks, best plans.
#pragma once

#include <array>

#include "scenarios/practice/hand.h"
#include "sim/rules/rule.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

using rules::Step;
inline constexpr std::size_t step_count = 7;

struct StepSaid {
    Step step{};
    bool done = false;  // by the trainee's own choice: what was taped is cut, laid, tied
    TextKey key;        // step.say.<step> or step.say.<step>-done; gaps {n}, {of}
    Arguments arguments;
};
using StepStrip = std::array<StepSaid, step_count>;

// `acts`: how many edits are done. `start` before any of them, `now` after.
StepStrip step_strip(const Vine& start, const Vine& now, std::size_t acts);

// The tool that a step's acts are done with.
// The pieces with something left to do in a step; none in steps that do nothing to a piece.
std::vector<AxisId> left_to_do(const Vine& start, const Vine& now, Step step);

HandTool tool_of(Step step);

// The first step not done; look back when all are.
Step next_step(const StepStrip& strip);

}  // namespace spurwright::practice
