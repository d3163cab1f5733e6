// Leave a spur for each cane; it grows next winter's cane. A side is asked for one only where a good cane and another
// good spur stand on it.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/asked.h"
#include "sim/rules/measure_plan.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: none, one or two; most keep one a cane.
inline constexpr std::array spur_count_claims{
    Claim{&sources::vineworks_spec, "the specification: replacement spurs", 2.0, 2.0, "count"},
    Claim{&sources::epee_2022, "abstract: one either side", 2.0, 2.0, "count"},
    Claim{&sources::hellman_2019,
          "one a trunk on vines of two trunks; none where a basal cane of the old fruiting cane is taken", 0.0, 2.0,
          "count"},
    says(sources::eltom_2015, "pp 54-57: the number depends on vine and preference"),
};

// By side. The first spur too many on the vine takes one side's mark, the second both.
std::array<PerMille, 2> marks_spur_count(const std::array<bool, 2>& spur, const std::array<int, 2>& more,
                                         const Asked& asked);
// Of the row along a cordon's arm.
Said say_row_count(const SidePieces& pieces, Side side, int asked);
Said say_spur_count(const SidePieces& pieces, Side side, bool asked_here, bool single, PerMille mark);
extern const Rule spur_count;

}  // namespace spurwright::rules
