// How likely an answer is right: two-parameter logistic model, with the difficulty of an item from the points that lie
// between its worst right and its best wrong choice; and what the counts of answers prove. Pure.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/learning/glicko2.h"
#include "sim/core/units.h"

namespace spurwright::learning {

// P(right) = 1 / (1 + exp(-a (theta - b))) [birnbaum-1968]; within 0.001 and 0.999.
double two_pl(double theta, double a, double b);
double two_pl_information(double theta, double a, double b); // a^2 P (1 - P)

// The prior of b: 0.75 (log2 4 - log2 margin), and what else makes it harder. Our choice; answers may move it later.
struct ItemLook {
    Tenths margin;                     // points; what is under 0.1 counts as 0.1
    int choices = 4;                   // + 0.3 for each beyond four
    bool one_rule_apart = false;       // + 0.4: the tempting one fails by a single rule
    bool hard_to_see = false;          // + 0.4: worn bark, low sun
};
double prior_difficulty(const ItemLook& look);

// Chance left out: of `choices` equal answers, the share that a guess gets is c; p = c + (1 - c) P.
double with_guessing(double known, int choices);
std::optional<double> known_share(double observed, int choices); // nothing where p lies under what guessing gets

// The difficulty at which somebody of this ability (logits) knows the share `known`: theta - logit(known) / a.
double wanted_difficulty(double theta, double known, double a = 1);

// One scale for both: a strength's rating as logits around 1500, and back.
double ability_of(const Strength& strength);
Strength strength_of_item(double b); // as sure as a prior is

// What is lost as a share of a win: exp(-r / 25), r points (our choice). Only for strengths.
double graded_outcome(Tenths lost);

// Wilson's interval of a share [wilson-1927], 95 %.
struct ShareInterval {
    double low = 0, high = 1;
};
ShareInterval wilson(int right, int of);

// Mean of (stated - came)^2 [brier-1950]; nothing of nothing.
struct Stated {
    double sure = 0; // 0.95 sure, 0.75 fairly, 0.50 guessing
    bool right = false;
};
std::optional<double> brier(const std::vector<Stated>& stated);

} // namespace spurwright::learning
