// The tables of one vine under one set of house rules, filled by the same marks that the judge gives: so the sum of a
// choice's pieces is what the judge says of its full plan, to the tenth.
#pragma once

#include <optional>

#include "sim/planning/choice.h"
#include "sim/planning/tables.h"
#include "sim/rules/asked.h"

namespace spurwright::planning {

// What is measured of a piece: as a cane laid to each side cut at each of its cut nodes, as a spur of each length.
struct MeasuredPiece {
    Side side{};
    bool sucker = false;
    std::array<std::vector<rules::CaneFacts>, 2> canes;  // [laid to]; each cut node keeps one count bud more
    std::vector<rules::SpurFacts> spurs;                 // 1, 2, 3 buds, as far as it has them
};
// From facts alone, measured or written down by hand: row for row with the pieces.
Tables tables_of(const std::vector<MeasuredPiece>& pieces, const rules::Offers& offers, Length spacing,
                 const rules::HouseRules& house);

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
