// A vine's tables as geometry: where each stem runs and how thick it is, where its buds, tendrils, bunch stems, wounds
// and ties sit, and what the trellis holds. Plain doubles in metres; nothing here is ever measured or judged. A mesh,
// the picking capsules and a page's drawing all start from this one struct. Must not know: triangles, colours, rules.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "sim/core/ids.h"
#include "sim/shape/centre_line.h"
#include "sim/vine/words_of.h"

namespace spurwright {
struct Vine;
}

namespace spurwright::shape {

enum class Wood : unsigned char { one_year, two_year, old }; // what its bark tells

// How the outer end of a stem looks.
enum class StemEnd : unsigned char {
    crown, // a trunk's head: closed wood
    tip,   // thin, pointed, grey
    hedge, // blunt, weathered
    cut,   // a wound's face
    broken
};

struct StemNode {
    NodeId node;
    Vec3 place;
    Vec3 along;       // unit
    Vec3 plane;       // unit, square to `along`: the side a bud of rank +1 looks to
    double radius;    // mean
    double from_root; // metres along the chords
    int rank = 1;
    bool has_bud = false;
    Harm harm{};
};

// One axis as it stands, cut wood left out.
struct Stem {
    AxisId axis;
    NodeId parent;        // none for a trunk
    int parent_stem = -1; // index into VineShape::stems
    int age = 1;
    Wood wood{};
    Side side{};
    CaneClass grew{};
    Role mark{};
    bool trunk = false, lateral = false, dead = false, rootstock = false, laid = false;
    CentreLine line; // first point inside the parent's wood (a trunk: under the soil), last point the outer end
    std::vector<StemNode> nodes;
    StemEnd end{};
    Vec3 end_normal;      // unit, of the cut face
    int end_winters = 0;  // since the end was made; 0: this winter
    WoundId end_wound;    // none where no row tells of it
    double graft_at = -1; // metres along the chords; below 0: not grafted
    double ripe_at = 0;   // metres from the root along the chords: beyond it the bark is unripe

    double from_root(std::size_t line_point) const;
};

struct BudShape {
    BudId bud;
    std::uint32_t stem = 0, node = 0; // node: index within the stem
    BudKind kind{};
    Vec3 foot;  // on the centre line of the stem
    Vec3 out;   // unit, square to `along`
    Vec3 along; // unit, of the stem there
    double stem_radius = 0;
    bool harmed = false;
};

// A tendril or a bunch stem: on the far side of the node from its bud.
struct HangerShape {
    NodeId node;
    std::uint32_t stem = 0;
    Tendril tendril{};
    Bunch bunch{};
    Vec3 foot, out, along;
    double stem_radius = 0;
};

// A swollen crown of the head: old wood is drawn over it and its wounds sit on it.
struct CrownShape {
    std::uint32_t stem = 0;
    Vec3 middle;
    double radius = 0; // of a ball, a little longer along the row
};

// A wound that ends no standing stem: a face on the side of older wood.
struct WoundShape {
    WoundId wound;
    AxisId axis; // the axis cut
    NodeId node;
    std::uint32_t stem = 0;   // that bears the face
    Vec3 root, face, outward; // root: inside the bearer's wood
    Radii radii;
    double drawn_share = 1; // of the face that callus has left open; the size of the cut itself is `radii`
    int winters = 0;        // since the cut; 0: this winter
    int wood_age = 1;
};

// Where the bark of an old trunk died back from a wound or a dead arm: bare, flat, grey. It is as wide as told at its upper
// end and runs out to a point below.
struct DeadStrip {
    std::uint32_t stem = 0;  // of the trunk
    double from = 0, to = 0; // metres from the root along the chords: lower and upper end
    Vec3 out;                // unit, square to the trunk at the upper end: where its middle looks to
    double half_width = 0;   // metres, round the trunk
    WoundId wound;           // that it comes from, or
    AxisId dead;             // the dead arm
};

struct TieShape {
    TieId tie;
    NodeId node;
    Vec3 cane, along, wire; // place on the cane's centre line, its direction, nearest place on a wire
    double cane_radius = 0;
    int winters = 0;
    bool tight = false;
    TieState state{};
};

struct WireShape {
    WireId wire;
    WireKind kind{};
    double height = 0, across = 0, radius = 0;
    bool dropped = false;
};

struct PostShape {
    double x = 0, top = 0;
    bool end = false; // of the row: round timber with a stay
};

struct TrellisShape {
    std::vector<WireShape> wires; // a pair of catch wires is two rows of one id
    std::vector<PostShape> posts;
    std::vector<Vec3> clips; // middles; each holds a pair together
    double clip_half_gap = 0;
    Vec3 stake_foot;
    double stake_top = 0;
    double fruiting_height = 0, hedge_height = 0;
    double near_end = 0, far_end = 0; // along X, how far wires are drawn
};

struct NeighbourShape {
    double x = 0; // of its trunk
    NeighbourKind kind{};
    double cane_end = 0; // x of the end of the cane that reaches towards this vine
};

struct VineShape {
    std::uint64_t seed = 0;
    int winter = 1;
    double spacing = 0, row_spacing = 0;
    std::vector<Stem> stems; // a parent stands before its children
    std::vector<BudShape> buds;
    std::vector<HangerShape> hangers;
    std::vector<CrownShape> swellings;
    std::vector<WoundShape> wounds;
    std::vector<DeadStrip> dead_strips; // at most one a trunk
    std::vector<TieShape> ties;
    TrellisShape trellis;
    std::array<NeighbourShape, 2> neighbours;
    Vec3 head;
    std::array<Vec3, 2> crowns; // towards the near post, towards the far post

    const Stem* find(AxisId axis) const; // null where it does not stand
};

// The shape of the wood that stands. Pure; the same vine gives the same doubles on one machine.
VineShape vine_shape(const Vine& vine);

} // namespace spurwright::shape
