// What an act that cost something means next season: the best that was open before it and the best that was left after
// it, each carried out by careful hands and lived through the same drawn seasons. So it tells of the act alone, and not
// of the hand. The same for what can still be mended. Pure: any thread. Must not know: sentences, screens.
#pragma once

#include <optional>
#include <vector>

#include "scenarios/ahead/look_ahead.h"
#include "sim/planning/cordon_charges.h"

namespace spurwright::ahead {

inline constexpr std::size_t most_acts_lived = 3; // of a plan, those that cost most (our choice)
inline constexpr Tenths least_lived{10};          // an act that cost less than a point is not told of (our choice)

struct TwoWays {
    std::optional<std::size_t> edit; // into the plan, from 0; none: what can still be mended
    Plan better, left;
};

// Of the acts charged, after which something is still open, and of the mending: in the order of the work.
std::vector<TwoWays> two_ways(const Vine& before, const rules::HouseRules& house, const planning::Charges& charges);
std::vector<TwoWays> two_ways(const Vine& before, const rules::HouseRules& house, const planning::CordonCharges& charges);

struct ActAhead {
    std::optional<std::size_t> edit;
    AheadWinter better, left; // the next winter
    std::vector<DrawnWinter> better_draws, left_draws;
};
using ActsAhead = std::vector<ActAhead>;

// One for each of the ways. `wish.seasons` is 1.
ActsAhead acts_ahead(const Vine& before, const rules::HouseRules& house, const std::vector<TwoWays>& ways, const AheadWish& wish);

// Null where it was not lived: it cost too little, or left nothing open.
const ActAhead* find_act(const ActsAhead& lived, std::optional<std::size_t> edit);

// What a pruner asks of next season, in the order it comes: shoots, crop, canes to choose from and where they stand. Of them
// those in which the ways part: their middles lie a tenth of the larger or more apart, and in eight of ten seasons, which
// both live through, the same way is ahead (our choice).
std::vector<Figure> parted(const ActAhead& act);

} // namespace spurwright::ahead
