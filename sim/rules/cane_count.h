// Lay the number of canes asked for, one to each side. A side that offers no acceptable cane is not asked.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/asked.h"
#include "sim/rules/measure_plan.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: the number follows vigour and site.
inline constexpr std::array cane_count_claims{
    Claim{&sources::vineworks_spec, "the specification: canes of 8 buds", 2.0, 2.0, "count"},
    Claim{&sources::naylor_nz, "interview: canes a vine", 2.0, 4.0, "count"},
    Claim{&sources::epee_2022, "abstract: canes of 10 nodes", 1.0, 4.0, "count"},
    Claim{&sources::greven_2014, "abstract: canes of 12 nodes", 2.0, 6.0, "count"},
};

// By side. Each cane too many, and each cane on a side that asks for none, takes one side's mark: its own first.
std::array<PerMille, 2> marks_cane_count(const PairFacts& pair, const Asked& asked);
Said say_cane_count(const SidePieces& pieces, Side side, const Asked& asked, PerMille mark, const HouseRules& house);
extern const Rule cane_count;

}  // namespace spurwright::rules
