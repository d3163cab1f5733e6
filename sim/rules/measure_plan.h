// All facts of a pruned vine, from the tables before and after: which pieces were kept, what was left, every cut.
#pragma once

#include "sim/pruning/plan.h"
#include "sim/rules/asked.h"
#include "sim/rules/facts.h"

namespace spurwright::rules {

// Why a side has no fruiting cane.
enum class NoCane : unsigned char { none_laid, marked_not_laid, broken, too_few_buds, old_wood };

struct SidePieces {
    std::optional<CaneFacts>
        cane;  // of several laid, the nearest to the crown point, then the lowest, then the thickest
    std::optional<SpurFacts> spur;  // likewise
    NoCane why_none{};
    AxisId instead;  // what stands or lies in place of a cane, for the sentence
    int instead_buds = 0, instead_age = 1;
    std::vector<AxisId> more_canes, more_spurs;
    // Of a cordon: the spurs along its arm, outward, as many as are asked; of more the ones that crowd are too many.
    struct RowSpur {
        SpurFacts spur;
        RowPlaceFacts place;
    };
    std::vector<RowSpur> row;
    AxisId bare_stub;               // a stub without a count bud where there is no spur
    AxisId spur_not_cut;            // a cane with a spur's tape that was not cut to one
    bool good_cane_stands = false;  // an acceptable cane of this side, uncut and not laid
    std::vector<CaneFacts> good_standing;  // those, each in its shortest form
    bool good_spur_stands = false;  // an acceptable spur likewise
    std::vector<SpurFacts> good_spurs;     // those, cut to two buds
};

struct PlanFacts {
    std::array<SidePieces, 2> sides;  // left, right
    LoadFacts load;
    std::vector<CutFacts> cuts;
    ClearingFacts clearing;
    SuckerFacts suckers;
    StandingFacts standing;
    WeighingFacts weighing;             // empty but where the house asks for it
    std::vector<AxisId> old_wood_laid;  // two years or more, this winter
    AxisId trunk_cut;                   // none: no trunk was
    struct SuckerLaid {
        AxisId axis;
        bool rootstock = false;
    };
    std::vector<SuckerLaid> suckers_laid;
    PairFacts pair() const;
};

// `after` must be `before` pruned: the same rows.
PlanFacts measure_plan(const Vine& before, const Vine& after, const HouseRules& house, const Offers& offers);

// What the tables do not tell: in which order the spares were cut and the canes tied. Without it spares count as cut in
// good order.
void note_order(PlanFacts& facts, const Plan& plan);

}  // namespace spurwright::rules
