// The look back on a finished vine: the judgement, walked from the head along each side to the tip, each piece beside
// the better choice for the same side. One vector of findings: list, walk and counts read the same.
// Must not know: sentences, pictures.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/charged_look.h"
#include "scenarios/practice/moved_cut.h"
#include "scenarios/weighing/exercise.h"
#include "sim/rules/judge.h"

namespace spurwright::practice {

enum class Stop : unsigned char { cap, finding, remark };

// One piece of the walk.
struct Walked {
    Stop stop{};
    std::size_t at = 0;        // into judgement.caps, findings or remarks
    AxisId axis;               // where to look; none: the vine as a whole
    NodeId node;               // near it; none: the axis' crown
    Side side{};
    Tenths lost;
    rules::Mend mend{};
    rules::Step step{};
    TextKey key;               // its sentence
    Arguments arguments;
    bool folded = false;       // costs nothing, or too little to speak of
    std::vector<std::size_t> with;  // further findings of the same missing piece: told here once, `lost` is of all
};

struct StepLoss {
    rules::Step step{};
    Tenths lost;
    int findings = 0;  // with a loss
};

struct LookBack {
    rules::Judgement mine;
    std::vector<Walked> walk;                // caps first, then head to tip: near-post side, far-post side, the vine
    std::vector<StepLoss> by_step;           // steps with a loss, in the order of work
    std::optional<PlansFound> plans;         // not before the search is done
    std::vector<std::vector<Twin>> twins;    // of each plan in plans->as_good
    planning::Tally tally;                   // of mine
    std::optional<rules::Judgement> best;    // judgement of the best plan
    std::optional<ChargedLook> charged;      // to which choice each loss goes; with the plans
    std::optional<MovedCut> moved;           // a cut tried elsewhere; none: not asked for
    bool mine_as_good = false;               // within the tolerance of the best
    std::optional<weighing::Verdict> weighed; // of its prunings, where they were weighed
    std::size_t current = 0;                 // place in the walk; walk.size(): the heading
    bool twin_shown = true;
    std::size_t as_good_shown = 0;           // which plan's twin lines are drawn
};

// `after` is `before` pruned. Without plans.
LookBack look_back(const Vine& before, const Vine& after, const rules::HouseRules& house);
// Adds what the search found. `done` is the plan that was judged.
void add_plans(LookBack& look, const Vine& before, const rules::HouseRules& house, PlansFound plans, const Plan& done);
// What took most of a stop's loss; nothing where it lost nothing, or the plans are not found.
std::optional<planning::FindingShare> charged_to(const LookBack& look, const Walked& stop);

// Of `twins`, those that stand for a stop of the walk: the same side, a cane for a cane and a spur for a spur.
std::vector<Twin> twins_for(const LookBack& look, const Walked& stop, const std::vector<Twin>& twins);

}  // namespace spurwright::practice
