// From a choice to the one full plan of it, as a careful hand would carry it out: everything marked, cleared, cut, laid
// and tied, nothing forgotten. So a choice is worth what its pieces are worth, and two plans can be compared by choice.
#pragma once

#include "sim/planning/choice.h"
#include "sim/pruning/plan.h"

namespace spurwright::planning {

// `choice` must lie in the space of pieces(vine, house), `vine` be uncut this winter. The plan is legal on it. Order:
// marks (left cane, right cane, left spur, right spur); last year's wood cut off, then every other live cane, suckers
// flush; spurs, then laterals on what is kept; cane ends; lays, then ties. Axes ascend within a step, lengths are whole
// tenths of a millimetre, every cut is made with the smallest tool that suits.
// `standing_first`: of the free canes, those that are left standing before others where the house asks for kickers or spares.
Plan complete(const Vine& vine, const rules::HouseRules& house, const Choice& choice, const std::vector<AxisId>& standing_first = {});

}  // namespace spurwright::planning
