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
    bool asked = true;  // the system knows it: on a cordon no length is cut and nothing is laid
    TextKey key;        // step.say.<step> or step.say.<step>-done; gaps {n}, {of}
    Arguments arguments;
};
using StepStrip = std::array<StepSaid, step_count>;

// What the house asks for on the vine: count buds in all; of a cordon so many spurs.
struct AskedOfVine {
    int buds = 0, row_spurs = 0;
};

// `acts`: how many edits are done. `start` before any of them, `now` after.
StepStrip step_strip(const Vine& start, const Vine& now, std::size_t acts, const AskedOfVine& asked);

// The pieces with something left to do in a step; none in steps that do nothing to a piece.
std::vector<AxisId> left_to_do(const Vine& start, const Vine& now, Step step);

// The tool that a step's acts are done with.
HandTool tool_of(Step step);

// The first step not done; look back when all are.
Step next_step(const StepStrip& strip);
// The asked step after this one; look back is the last.
Step step_after(const StepStrip& strip, Step step);

}  // namespace spurwright::practice
