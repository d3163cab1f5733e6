// A finished plan looked back on: its judgement beside the best plan, each loss charged to the choice that made it
// unavoidable, what a moved cut would win, the plans as good, and the houses in whose way it was pruned. One record that
// text, JSON and page are made from. Must not know: sentences, pictures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenarios/ahead/acts_ahead.h"
#include "scenarios/io/house_rules_file.h"
#include "sim/planning/charged_caps.h"
#include "sim/planning/cordon_charges.h"
#include "sim/planning/plan_mistakes.h"
#include "sim/planning/what_if.h"

namespace spurwright::review {

inline constexpr std::size_t most_plans_as_good = 20;

// The own wood beside the best plan's, for one side and kind.
struct TwinPiece {
    Side side{};
    bool spur = false;
    NodeId mine, best;  // the node it is cut after; none where there is no such piece. Of a spur the last count bud's node
    bool same() const { return mine == best; }
};

// Of a cordon, whose choices are rows of spurs: what the other fields tell of canes is told here.
struct RowReview {
    planning::CordonChoice best, mine;
    std::vector<planning::CordonChoice> as_good;              // beside plans_as_good
    std::vector<planning::CordonChoice> better, left;         // beside charges.edits
    planning::CordonChoice meant;                             // of the mending: the best that still stands
};

struct Review {
    Plan plan;
    Vine after;
    rules::Judgement mine, best;
    planning::BestPlan best_plan;
    planning::Tally tally;  // of mine
    Tenths within, noise;
    Tenths least() const { return best_plan.points - std::max(within, noise); }
    bool as_good() const { return mine.points >= least(); }
    std::uint64_t as_good_count = 0;
    std::vector<planning::BestPlan> plans_as_good;  // the best first, at most most_plans_as_good
    planning::Charges charges;
    ahead::ActsAhead seasons;  // what the acts charged mean next season
    std::vector<planning::ChargedCap> charged_caps;  // beside mine.caps
    std::vector<rules::Mistake> mistakes;
    std::optional<RowReview> row;          // of a cordon alone
    std::vector<TwinPiece> twins; // left cane, right cane, left spur, right spur; of a cordon each spur, outward by side
    std::vector<planning::WhatIf> ends;    // better ends of own pieces
    std::vector<std::string> other_houses; // shipped sets under which it is as good, though under these rules it is not
};

// `before` is uncut this winter, can be judged and has a plan; `plan` is legal on it.
Review review(const Vine& before, const Plan& plan, const io::HouseRulesFile& house, const planning::Planning& planning,
              const io::Assets& assets);

// The same of an uncut cordon that can be judged; `plan` lays nothing.
Review review_of_cordon(const Vine& before, const Plan& plan, const io::HouseRulesFile& house);

} // namespace spurwright::review
