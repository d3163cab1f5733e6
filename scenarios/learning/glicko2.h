// How strong somebody is at a skill, and how sure that is: Glicko-2 [glickman-2022]. Each item is the opponent; a win is an
// answer as good as the best, or a share of one. Never shown as points, never part of a mark. Pure.
#pragma once

#include <vector>

namespace spurwright::learning {

struct Strength {
    double rating = 1500, deviation = 350, volatility = 0.06; // of the note's scale
    bool operator==(const Strength&) const = default;
};

// One answer: against which item, and what came of it, 0 to 1.
struct Met {
    Strength item;
    double score = 0;
};

inline constexpr double usual_tau = 0.5; // how much volatility may change: our choice, within the note's 0.3 to 1.2
inline constexpr double surest_deviation = 30, least_sure_deviation = 350; // ours: an old strength never stops moving

// After one period with these answers, in any order; without any it only grows less sure. Finite for any finite input.
Strength after_period(const Strength& before, const std::vector<Met>& met, double tau = usual_tau);

// How often `one` does well against `item`: 0.001 to 0.999.
double expected_score(const Strength& one, const Strength& item);

} // namespace spurwright::learning
