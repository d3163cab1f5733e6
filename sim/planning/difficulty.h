// How hard a vine is to choose on, before anybody has tried: from its tables and the exact search alone. What is hard
// is the cane of each side: how many there are for each that is as good, how little the best wrong one costs, and
// whether wrong ones look right. Spurs, lengths and cuts are not in it. All numbers our choice, to be fitted to answers
// later.
#pragma once

#include <array>
#include <optional>

#include "sim/planning/planning.h"

namespace spurwright::planning {

// One side's cane, judged by the best whole plan that lays it there.
struct SideDifficulty {
    int choices = 0;  // canes that can be laid to it, and its own that would break there: they look no different
    int good = 0;     // of them as good as the best
    int tempting = 0; // of the others: as thick as the thinnest good one or thicker, and as long in ripe buds
    Tenths margin{}; // of the best plan over the best one with a wrong cane there; where none is wrong, the whole total
    bool operator==(const SideDifficulty&) const = default;
};

// The scale is that of answers: at 0 somebody of middling strength is right half the time, each unit is a factor e in
// the odds; thousandths. Of a side:
//   0.75 (2 - log2 margin in points) + 0.3 (log2(choices / good) - 2) + 0.8 tempting / (tempting + good)
// so that 4 points and one good cane in four are 0; the last is the share of wrong ones among those that look right. Of
// a vine: the mean over its sides with a choice.
struct Difficulty {
    std::array<SideDifficulty, 2> sides; // left, right
    std::uint64_t plans = 0, good_plans = 0;
    Tenths tolerance{}; // plans within so much of the best are as good (eye_noise.h)
    std::int32_t scale = 0;
    bool operator==(const Difficulty&) const = default;
};

// Thousandths on that scale of one side; 0 choices or none good is a bug.
std::int32_t scale_of(const SideDifficulty& side);

// `planning` is that of this vine under this house. Nothing where the vine has no plan. Work: one search a cane and
// side.
std::optional<Difficulty> difficulty_of(const Vine& vine, const rules::HouseRules& house, const Planning& planning);

} // namespace spurwright::planning
