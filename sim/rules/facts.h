// What a mark needs to know of one piece, and nothing else. Measured once: by the search on the uncut vine, by the
// judge on the vine before and after, through the same functions (measure_pieces.h). A piece is a cane with its side
// and cut place, a spur with its length, a spur beside the cane of its own side, or a total. Whole numbers only.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "sim/vine/vine.h"

namespace spurwright::rules {

constexpr std::size_t index_of(Side side) { return side == Side::right ? 1 : 0; }  // into arrays by side: left, right

// Where a kept piece of one-year wood ends.
struct PieceEnd {
    std::uint32_t last_node = 0;  // outermost node kept
    Length beyond;                // wood past that node
    bool cut = false;             // this winter; else it runs to its ripe end
    bool operator==(const PieceEnd&) const = default;
};

// Of the wood between the last count bud and the end.
struct EndCutFacts {
    Length wood_beyond_bud;
    std::optional<Length> next_node;  // from that bud to the next node, where the uncut wood had one
    bool cut = false;
    bool operator==(const EndCutFacts&) const = default;
};

// What stands on the kept part of a piece, out to its last count bud.
struct HealthFacts {
    bool spot = false;  // disease
    bool wound = false;
    bool cracked = false;       // at the base
    bool twin = false;          // one of two canes from one node
    int dead_buds = 0;          // visibly dead or missing
    PerMille ripe_share{1000};  // firm brown length, of the kept length
    bool operator==(const HealthFacts&) const = default;
};

struct TyingFacts {
    enum class EndTie : unsigned char { none, loose, tight };
    EndTie end_tie = EndTie::tight;
    int tight_elsewhere = 0;
    int ties_over_buds = 0;
    int half_wraps = 2;
    Length sag;
    Strain strain;
    bool skin_crack = false;
    bool operator==(const TyingFacts&) const = default;
};

// A one-year cane laid to a side, cut after a count bud.
struct CaneFacts {
    AxisId axis;
    Side side{};          // laid to
    bool sucker = false;  // borne by the trunk low down, or by rootstock
    bool rootstock = false;
    int wood_age = 1;
    int count_buds = 0;         // kept, on ripe wood
    Length diameter;            // mean of joints 2 and 3
    PerMille axis_ratio{1000};  // major / minor there
    Length mean_joint;          // from the first count bud kept to the last
    PerMille joint_variation;   // standard deviation / mean of the kept joints, the first left out
    Length end_diameter;        // of the joint below the last count bud kept
    Length distance_to_head;
    std::optional<Length> creep;
    Length below_wire;
    Angle off_row;         // from the row direction of the laid side to the line node 0 - node 2
    Length over_the_head;  // how far its base stands over on the other side of the trunk; below 0: on its own
    HealthFacts health;
    Length reach;      // of the cut end along the wire from the trunk
    Length free_wire;  // to the neighbour's end; below 0: overlap
    // The same if the cane ended as careful hands end it after its last count bud; none where it does. A shorter or
    // longer end of wood earns nothing: neither room beside the neighbour nor a smaller gap.
    std::optional<Length> usual_free_wire;
    std::optional<Length> room;   // where no neighbour stands there: how far its own space runs from the trunk
    bool more_ripe_wood = false;  // the next count bud is ripe, thick enough and fits without overlap
    EndCutFacts end;
    TyingFacts tying;
    bool operator==(const CaneFacts&) const = default;
};

struct SpurFacts {
    AxisId axis;
    Side side{};  // of the head
    int count_buds = 0;
    Length first_joint_diameter;
    HealthFacts health;
    Length distance_to_head;
    std::optional<Length> creep;
    Length below_wire;
    Angle off_row_plane;               // of its first joints, out into the alley
    Points first_bud = Points::outward;  // of its first count bud
    EndCutFacts end;
    Angle off_upright;                 // of its first joints
    bool operator==(const SpurFacts&) const = default;
};

// A spur beside the cane laid to its own side, or beside none.
struct SpurPlaceFacts {
    struct Base {
        Length below_wire, distance_to_head;
        bool operator==(const Base&) const = default;
    };
    Base spur;
    std::optional<Base> cane;
    bool operator==(const SpurPlaceFacts&) const = default;
};

// A spur in the row along a cordon's arm.
struct RowPlaceFacts {
    Length climbed, above_lowest;  // from the arm; than the lowest good cane of its place
    std::optional<Length> gap;     // along the arm to the next spur inward; none where it is the first
    bool could_fill = false;       // a good cane stood in that gap, far enough from both
    bool operator==(const RowPlaceFacts&) const = default;
};

// Count buds left, and the vine's space.
struct LoadFacts {
    int fruiting = 0, spurs = 0;  // of one laid cane and one spur (at most 3 buds) a side
    int all = 0;                  // every count bud left on the vine
    Length spacing;
    int counted() const { return fruiting + spurs; }
    bool operator==(const LoadFacts&) const = default;
};

// Which sides have a cane, and whether a sucker is among them.
struct PairFacts {
    std::array<bool, 2> cane{};  // laid, one-year, whole, with enough count buds: left, right
    std::array<int, 2> more{};   // canes beyond that one
    bool sucker_laid = false;
    bool operator==(const PairFacts&) const = default;
};

// One cut of the plan.
struct CutFacts {
    AxisId axis;
    bool on_vine = true;  // its face still stands; else a later cut took it off
    int wood_age = 1;
    Length diameter;  // the larger one of the face
    Tool tool{};
    bool dead_wood = false;
    bool on_trunk = false;
    bool needed = false;        // the pieces kept ask for it
    PerMille stub;              // wood left / diameter; of wood of two years or more
    bool forced_short = false;  // the next node allows no longer stub
    AxisId again_on;            // where nothing wanted needs the wood inside it: the axis on which, cut farther in, it has its stub
    bool operator==(const CutFacts&) const = default;
};

// What had to come off, and what was left.
struct ClearingFacts {
    bool pieces_kept = false;            // a cane or a spur
    int cuts_due_in_old_wood = 0;        // for the pieces kept
    int old_cuts_not_made = 0;           // of those
    bool any_cut_due = false;            // in wood of any age
    std::vector<AxisId> pieces_left;     // unwanted one- and two-year pieces still on the vine
    std::vector<AxisId> old_canes_left;  // last winter's laid canes among them
    int one_year_nodes = 0, one_year_nodes_removed = 0;
    bool spotted_wood_cut = false;  // with disease: the tools carry it on
    bool operator==(const ClearingFacts&) const = default;
};

// Canes left standing on purpose, told by their tape, and those forgotten.
struct StandingFacts {
    std::vector<AxisId> kickers;  // whole, upright and untied; at most as many as wanted
    std::vector<AxisId> spoilt;   // marked as kickers, but shortened or tied
    int late = 0;                 // kickers that still stand though frost is over
    int forgotten = 0;            // whole upright canes beyond the kickers wanted
    int spares_cut = 0;           // marked as spares, and cut off in the end
    int spares_early = 0;         // of those, before the last cane was tied
    bool operator==(const StandingFacts&) const = default;
};

// What somebody weighed.
struct Report {
    Mass weight;
    bool tared = true;
    bool operator==(const Report&) const = default;
};
struct WeighingFacts {
    std::optional<Report> report;
    Mass bundle;     // one-year wood cut off, as the house counts it
    Mass ends;       // of it, the ends and side shoots of the pieces kept
    Mass old_wood;   // cut off too, and no part of it
    bool operator==(const WeighingFacts&) const = default;
};

struct SuckerFacts {
    std::vector<AxisId> left;   // standing, laid, or kept as a stub with count buds
    std::vector<AxisId> stubs;  // cut, but with base buds left
    int removed = 0;            // at their origin
    bool operator==(const SuckerFacts&) const = default;
};

}  // namespace spurwright::rules
