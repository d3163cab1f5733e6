// On old wood leave a stub one to two times the cut's width, tidied next winter; never flush.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/say.h"

namespace spurwright::rules {

// They differ: 1 x, 1.5-2 x, or no relation to the diameter.
inline constexpr std::array old_wood_stub_claims{
    Claim{&sources::deloire_2021, "stub on old wood, x diameter", 1.5, 2.0, "ratio"},
    Claim{&sources::ives_8418, "the accepted rule, then tested, x diameter", 1.0, 1.0, "ratio"},
    says(sources::ugniblanc_oeno, "abstract: no correlation of necrosis and diameter"),
    says(sources::sosnowski_2023, "fewer, smaller wounds and longer stubs reduce disease"),
};

// Of one cut through wood of two years or more. One forced short by the next node counts full.
PerMille mark_stub(const CutFacts& cut, const HouseRules& house);
// The mean over the cuts, a cut that was due and not made counting none; full where none was due and none made.
PerMille mark_old_wood_stub(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
// The same once what was due is cut and what is too long, or can be cut farther in, is cut again; what else is too short
// stays so.
PerMille mark_old_wood_mended(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house);
// Where mending wins the loss back it tells of the worst that can be cut again, or of what was not cut; else of the worst
// that is too short.
Said say_old_wood_stub(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house, bool mended);
extern const Rule old_wood_stub;

}  // namespace spurwright::rules
