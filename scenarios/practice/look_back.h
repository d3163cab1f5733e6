// The look back on a finished vine: the judgement, walked from the head along each side to the tip, each piece beside
// the better choice for the same side. One vector of findings: list, walk and counts read the same.
// Must not know: sentences, pictures.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/plan_search.h"
#include "scenarios/weighing/exercise.h"
#include "sim/rules/judge.h"

namespace spurwright::practice {

// The better choice drawn beside the own wood: an axis of the vine as it was, out to a node, lying where it would lie.
struct Twin {
    AxisId axis;
    NodeId last;               // node it is cut past
    Side side{};
    bool spur = false;         // else a laid cane
    std::vector<Place> places; // crown first, out to `last`
    bool operator==(const Twin&) const = default;
};

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
    bool mine_as_good = false;               // within the tolerance of the best
    std::optional<weighing::Verdict> weighed; // of its prunings, where they were weighed
    std::size_t current = 0;                 // place in the walk; walk.size(): the heading
    bool twin_shown = true;
    std::size_t as_good_shown = 0;           // which plan's twin lines are drawn
};

// `after` is `before` pruned. Without plans.
LookBack look_back(const Vine& before, const Vine& after, const rules::HouseRules& house);
// Adds what the search found.
void add_plans(LookBack& look, const Vine& before, const rules::HouseRules& house, PlansFound plans);

// The twin lines of one plan: its canes laid, its spurs.
std::vector<Twin> twins_of(const Vine& before, const Plan& plan);

// Of `twins`, those that stand for a stop of the walk: the same side, a cane for a cane and a spur for a spur.
std::vector<Twin> twins_for(const LookBack& look, const Walked& stop, const std::vector<Twin>& twins);

}  // namespace spurwright::practice
