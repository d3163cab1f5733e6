// What a vine asks for, and how much each rule then weighs: decided from the vine before any cut, never from the plan,
// so that all plans of a vine share one denominator. Weights in force sum to exactly 1000 tenths; left and right
// always weigh alike.
#pragma once

#include <array>
#include <vector>

#include "sim/rules/cordon_row.h"
#include "sim/rules/facts.h"
#include "sim/rules/house_rules.h"

namespace spurwright::rules {

// A cane that may be laid, a spur that may be kept: facts of the uncut vine. Of a cane its shortest form is asked, cut
// after the fewest count buds that make a cane: what is wrong farther out can be cut off.
bool acceptable_cane(const CaneFacts& shortest, const HouseRules& house);
bool acceptable_spur(const SpurFacts& one_bud, const HouseRules& house);

// By side: left, right.
struct SideOffers {
    std::vector<AxisId> canes, spurs;  // acceptable ones
    std::vector<CaneFacts> shortest;   // of the canes, beside them
    std::vector<SpurFacts> two_buds;   // of the spurs, beside them, cut to two buds; of a cordon none
};
struct Offers {
    System system = System::two_cane;
    std::array<SideOffers, 2> sides;
    CordonRow row;  // of a cordon: then a side offers the good ones of it as spurs, and no canes
    std::array<int, 2> row_asked{};
    bool suckers = false;   // growth on the trunk or the rootstock
    bool old_wood = false;  // two-year wood, of which some may have to come off
    // Live canes that could stand as a kicker or a spare, the nearest to the head first. Looked for only where the house
    // wants any.
    std::vector<AxisId> standing;
};

struct Asked {
    std::array<bool, 2> cane{}, spur{};  // by side
    // A vine of a single cane: one cane and one spur in all, on whichever side; so both sides are asked or neither is.
    bool single = false;
    // A cordon: no cane, and on each side so many spurs along its arm.
    bool cordon = false;
    std::array<int, 2> row{};
    bool suckers = false, old_wood = false;
    bool kickers = false, spares = false;  // wanted, and enough canes stand whatever two canes and two spurs are kept
    // Weight of one piece, or of a rule judged once; 0 where it is not asked. Tenths of a point.
    std::array<Tenths, rule_count> per_cane{}, per_spur{}, once{};

    Tenths of_cane(RuleName name, Side side) const {
        return cane[index_of(side)] ? per_cane[index_of(name)] : Tenths{};
    }
    Tenths of_spur(RuleName name, Side side) const {
        return spur[index_of(side)] ? per_spur[index_of(name)] : Tenths{};
    }
    Tenths of_vine(RuleName name) const { return once[index_of(name)]; }
    int canes() const { return single ? cane[0] : cane[0] + cane[1]; }  // asked in all
    int spurs() const { return cordon ? row[0] + row[1] : single ? spur[0] : spur[0] + spur[1]; }
    Tenths total() const;  // of all that is asked
};

Offers offers(const Vine& before, const HouseRules& house);
Asked asked(const Offers& offers, const HouseRules& house);
Asked asked(const Vine& before, const HouseRules& house);

// Fraction of a share: points are rounded down to whole tenths per piece.
constexpr Tenths points_of(Tenths share, PerMille mark) {
    return {static_cast<std::int32_t>(std::int64_t{share.count} * mark.count / 1000)};
}

}  // namespace spurwright::rules
