// Double pruning on a spur cordon, first pass: in early winter, by hand or by machine, every cane along the arms is cut to a
// long stub; the spurs are made late, from its lowest buds, so that they burst late. Judged by its few rules: how long
// the stubs are, that nothing goes which may become a spur, that no old wood is cut, and the tools. The second pass is an
// ordinary pruning of the cordon.
//
// They differ: 10 to 12 inches above the spurs [california-trunk], 30 to 45 cm above spur height [vineworks-frost], four
// buds, then two (growers' pages): all but the last lie in full.
#pragma once

#include "sim/core/source_list.h"
#include "sim/rules/cordon_row.h"
#include "sim/rules/findings.h"

namespace spurwright::rules {

inline constexpr std::array first_pass_claims{
    Claim{&sources::california_trunk, "first pass, above the spurs", 250.0, 300.0, "mm"},
    Claim{&sources::vineworks_frost, "first pass, above spur height", 300.0, 450.0, "mm"},
};

// What stands of a cane of the row, from its base to its end.
struct StubFacts {
    AxisId axis;
    Side side{};
    Length whole;         // before
    Length left;          // after; 0 where it is gone
    bool good = false;    // may become a spur
    bool gone = false;
    bool operator==(const StubFacts&) const = default;
};
struct FirstPassFacts {
    std::vector<StubFacts> stubs;  // by side, outward
    std::vector<CutFacts> cuts;
    bool operator==(const FirstPassFacts&) const = default;
};
FirstPassFacts measure_first_pass(const Vine& before, const Vine& after, const HouseRules& house);

// Full where it ends in the house's band, or was shorter from the start and still stands; none where a good cane is gone.
PerMille mark_stub(const StubFacts& stub, const HouseRules& house);

// 1000 tenths in all: 600 shared out among the canes, what rounding leaves and 250 for old wood left alone, 150 for tools
// (our choice). `after` must be `before`, a formed cordon, pruned.
Judgement judge_first_pass(const Vine& before, const Vine& after, const HouseRules& house);

}  // namespace spurwright::rules
