// The tables of one vine under one set of house rules, filled by the same marks that the judge gives: so the sum of a
// choice's pieces is what the judge says of its full plan, to the tenth.
#pragma once

#include <optional>

#include "sim/planning/choice.h"
#include "sim/planning/tables.h"

namespace spurwright::planning {

struct VineTables {
    std::vector<Piece> pieces;  // row for row with tables.candidates
    Tables tables;
};

// Facts of the uncut vine alone. Each cane's course along the wire is solved once a side.
VineTables vine_tables(const Vine& vine, const rules::HouseRules& house);

Choice choice_of(const VineTables& tables, const Pick& pick);
// Nothing where the choice is not in the space.
std::optional<Pick> pick_of(const VineTables& tables, const Choice& choice);

}  // namespace spurwright::planning
