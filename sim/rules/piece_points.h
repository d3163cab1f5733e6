// Points of one piece: the terms of which every total is the sum. The judge writes its findings from the same marks,
// so the search, which only adds these up, cannot differ from it.
//   total = cane_points(left) + cane_points(right) + pair_points + spur_points and place_points of each side
//         + load_points + canonical_points, for a plan as complete() makes it.
// A piece that is missing earns nothing, and neither does one on a side that asks for none.
#pragma once

#include "sim/rules/asked.h"

namespace spurwright::rules {

struct RuleMark {
    RuleName rule;
    PerMille mark;
};

// Every rule about a laid cane but cane-count. `short_load`: the vine's count buds are so few that a gap can be a
// fault (short_load() below).
inline constexpr std::size_t cane_rule_count = 12;
std::array<RuleMark, cane_rule_count> cane_marks(const CaneFacts& cane, const HouseRules& house, bool short_load);
Tenths cane_points(const CaneFacts& cane, const HouseRules& house, const Asked& asked, bool short_load);

// spur-count (it is there), spur-buds, spur-size, spur-direction, end-cut.
inline constexpr std::size_t spur_rule_count = 5;
std::array<RuleMark, spur_rule_count> spur_marks(const SpurFacts& spur, const HouseRules& house);
Tenths spur_points(const SpurFacts& spur, const HouseRules& house, const Asked& asked);

// spur-place: beside the cane laid to the spur's own side, or none.
Tenths place_points(const SpurPlaceFacts& place, Side side, const HouseRules& house, const Asked& asked);

// Of a spur in the row along a cordon's arm: spur-place.
Tenths row_place_points(const RowPlaceFacts& place, Side side, const HouseRules& house, const Asked& asked);

// bud-load, and bud-kill-adjust where a house weighs it.
int usual_target_buds(const HouseRules& house, Length spacing);  // of a winter that killed no buds
int target_buds(const HouseRules& house, Length spacing);
bool short_load(int counted_buds, int target, const HouseRules& house);  // too few: cane-reach looks at gaps
bool overloaded(int all_buds, int target, const HouseRules& house);      // far too many: a cap
Tenths load_points(const LoadFacts& load, const HouseRules& house, const Asked& asked);

// cane-count, and suckers in a plan that leaves none but laid ones.
Tenths pair_points(const PairFacts& pair, const Asked& asked);

// old-wood-stub, wound-size, tool-choice, wood-left-behind, kickers, spares and the weighing of a plan as complete() makes it: all their shares.
Tenths canonical_points(const Asked& asked);

}  // namespace spurwright::rules
