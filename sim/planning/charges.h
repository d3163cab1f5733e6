// Where the points went, told by the choice that made each loss unavoidable, not by the rule that shows it. After each
// edit the best plan still open is worth as much as before or less; what it lost is charged to that edit. What the hand
// then did worse than careful hands would have done for the same choice is charged finding by finding.
//   best - mine (before caps) = charges of edits + what can still be mended + what the hand cost, exactly in tenths.
// Must not know: sentences.
#pragma once

#include <optional>
#include <vector>

#include "sim/planning/planning.h"
#include "sim/rules/judge.h"

namespace spurwright::planning {

// One edit after which less can be had.
struct Charge {
    std::size_t edit = 0;      // into the plan, from 0
    AxisId on;                 // the wood it was made on
    rules::Step step{};        // choose: the wrong wood went or lies; lengths, spurs: it was cut too short
    Tenths lost;               // of the sum before caps
    Choice better;             // the best that was open before this edit
    std::optional<Choice> left;  // the best that was open after it; none: no cane can be laid any more
    AxisId missed;             // what the better choice keeps and can no longer be had; none where a length or a side is
    bool operator==(const Charge&) const = default;
};

// What more cutting could still win.
struct Mending {
    rules::Step step{};
    Tenths lost;
    Choice kept, better;
    bool operator==(const Mending&) const = default;
};

// What the hand cost, by finding of the own judgement; below 0 where it did better than asked.
struct HandLoss {
    std::size_t finding = 0;
    Tenths lost;
    bool operator==(const HandLoss&) const = default;
};

struct Charges {
    std::vector<Charge> edits;
    std::vector<Charge> even;    // edits that cost nothing, after which another choice is the best that is open
    std::optional<Mending> mending;
    std::vector<HandLoss> hand;  // without zeros
    Tenths best, mine;           // sums before caps
    Tenths caps;                 // what caps took from mine, less what they took from the best plan
    std::array<Tenths, 7> by_step{};  // all of it but caps, by the order of work
    Tenths of(rules::Step step) const { return by_step[static_cast<std::size_t>(step)]; }
    // Of the edits in hand: the best that is open after the first n of them; the points it would have.
    std::vector<Tenths> open_after;  // one more than edits of the plan; 0 where none is open
};

// `plan` is legal on `before`, which is uncut this winter and has a plan at all; `mine` is its judgement.
Charges charges(const Vine& before, const rules::HouseRules& house, const Planning& planning, const Plan& plan,
                const rules::Judgement& mine);

}  // namespace spurwright::planning
