// One plan told act by act, as somebody would show it: what is done, where to look, and why. Every reason is the judge's
// own sentence of that piece with the judge's number, or a fact of the vine's tables named by the rule it serves.
// Must not know: sentences, pictures, points.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/practice/hand.h"
#include "scenarios/practice/named_act.h"
#include "sim/rules/house_rules.h"
#include "sim/rules/rule.h"

namespace spurwright::practice {

struct Reason {
    const rules::Rule* rule = nullptr;  // whose sources stand behind it; none: the order of work
    Status status{};                    // of the threshold in force
    TextKey key;
    Arguments arguments;
    bool lacks = false;  // what the piece falls short in: said after what speaks for it
};

struct WatchedAct {
    std::optional<Edit> edit;  // none: only looked at
    NamedAct named;
    rules::Step step{};
    Spot spot;  // where to look; none: the vine as a whole
    std::vector<Reason> why;  // never empty; the first leads and is never a lack
};

// Looking first, then an act an edit, in the plan's order. `plan` must be legal on `start`, uncut this winter.
std::vector<WatchedAct> watched_acts(const Vine& start, const rules::HouseRules& house, const Plan& plan);

}  // namespace spurwright::practice
