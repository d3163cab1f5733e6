// One dormant vine as tables. A row is added by VineBuilder and never moved or erased within a winter: cutting sets
// `removed`, so ids, undo and the trainee's record stay valid. `season` writes the next winter's tables. What an axis
// is called (arm, spur, water shoot) is derived (vine_query.h), never stored. Must not know: plans, rules, pictures.
//
// Frame: +Y up, X along the row, Z across it, origin at the trunk's foot.
// Invariants are stated once, each as a sentence, in vine_check.h.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "sim/core/ids.h"
#include "sim/core/units.h"
#include "sim/vine/words_of.h"

namespace spurwright {

struct Place {
    Length x, y, z;
    auto operator<=>(const Place&) const = default;
};

struct Wire {
    WireId id;
    WireKind kind{};
    Length height;
    Length half_gap;  // across the row from the middle; 0 for a single wire
    WireState state{};
};

struct Neighbour {
    NeighbourKind kind{};
    Length reach;  // end of its cane, from its own trunk
};

// One shoot of one season, whatever it has become since.
struct Axis {
    AxisId id;
    NodeId parent;   // the node that bore it; none for a trunk
    int born = 0;    // season; its age in winter w is w - born + 1
    int order = 0;   // 0 trunk, else parent's + 1
    Side side{};     // of the head: whose crown point its wood reaches first; none for a trunk
    Length ripe;     // from the crown to the end of ripe wood
    CaneClass grew{};  // as it grew; judged by measures only
    AxisEnd end{};     // how its outer end came about before this winter
    AxisState state{};
    bool removed = false;  // by a cut of this winter; then all it bears is removed
    Role mark{};           // flagging tape: cuts nothing

    // Written by VineBuilder, no part of the vine's text: rows of its nodes, so that a look-up costs nothing.
    std::uint32_t first_node = 0, node_count = 0;
};

// One node and the joint below it.
struct Node {
    NodeId id;
    Length joint;         // to the node below; for the crown (index 0) its collar, from the surface of the parent's wood
    Length major, minor;  // diameters at the middle of the joint, major >= minor > 0
    Place place;          // written by posture and by laying only; both round once
    int rank = 1;         // which of the two ranks: +1, -1
    int tendril_class = 0;
    Tendril tendril{};
    Bunch bunch{};
    Lateral lateral{};
    Harm harm{};
    bool removed = false;  // from here outward once true

    std::uint32_t first_bud = 0, bud_count = 0;  // rows of its buds, as above
};

struct Bud {
    BudId id;
    BudKind kind{};
    bool primary = true, secondary = true, tertiary = true;  // alive
    Points points{};
    bool harmed = false;  // visibly dead: missing, dried out, crushed or knocked off
};

struct Wound {
    WoundId id;
    AxisId axis;   // the axis cut
    NodeId node;   // last node kept on the inner side; the parent's node where the cut took the crown off
    Length beyond;  // wood left past that node on the cut axis; for a cut in the collar, past the parent's surface
    Length major, minor;  // of the face
    int wood_age = 1;     // when cut
    int winter = 1;
    Tool tool{};
    Angle tilt;
    bool protected_face = false;
};

struct Laid {
    AxisId axis;
    int winter = 1;
    Side side{};
    int half_wraps = 0;
    Strain strain;  // the largest
    NodeId worst;   // node of it
    LaidState state{};
};

struct Tie {
    TieId id;
    NodeId node;
    Length beyond;
    int winter = 1;
    bool tight = false;
    TieState state{};
};

struct Brush {
    BrushId id;
    NodeId node;           // the first node that came off
    bool hanging = false;  // held by tendrils
};

class CourseBook;

struct Vine {
    int recipe = 255;        // generator version; 255 for drawn or edited vines
    std::uint64_t seed = 0;  // 40 bit
    System system{};
    std::string variety = "plain";
    int winter = 1;  // since planting; winter w follows season w
    Length spacing, row_spacing;
    Vigour vigour = Vigour::moderate;
    bool frost = false;
    NodeId graft;  // trunk node just above the union; none where own-rooted
    NodeId head;   // last node of the trunk, fixed when it was topped
    NodeId crown_left, crown_right;
    std::optional<Length> origin_left, origin_right;  // distance to the head of last winter's laid cane
    std::int32_t capacity = 0;                        // thousandths of a shoot; 0: from the site
    PerMille reserves = whole;
    Mass last_prunings, last_yield;  // 0 is not known

    std::vector<Wire> wires;
    std::array<Neighbour, 2> neighbours;  // left, right
    std::vector<Axis> axes;
    std::vector<Node> nodes;
    std::vector<Bud> buds;
    std::vector<Wound> wounds;
    std::vector<Laid> laid;
    std::vector<Tie> ties;
    std::vector<Brush> brush;

    // Written by VineBuilder, no part of the vine's text: what laying its canes has answered so far (course_book.h).
    // May be empty: then nothing is kept.
    std::shared_ptr<CourseBook> courses;

    // Null if this vine does not have it. Binary search over the axes, then one step.
    const Axis* find(AxisId) const;
    const Node* find(NodeId) const;
    const Bud* find(BudId) const;

    const Neighbour& neighbour(Side side) const { return neighbours[side == Side::right ? 1 : 0]; }
    NodeId crown(Side side) const { return side == Side::right ? crown_right : crown_left; }
    std::optional<Length> origin(Side side) const { return side == Side::right ? origin_right : origin_left; }

    // The nodes of an axis, crown first; the buds of a node. `axis` and `node` must be rows of this vine.
    struct Nodes {
        const Node* first;
        std::uint32_t count;
        const Node* begin() const { return first; }
        const Node* end() const { return first + count; }
        std::uint32_t size() const { return count; }
        const Node& operator[](std::size_t i) const { return first[i]; }
        const Node& back() const { return first[count - 1]; }
    };
    struct Buds {
        const Bud* first;
        std::uint32_t count;
        const Bud* begin() const { return first; }
        const Bud* end() const { return first + count; }
        std::uint32_t size() const { return count; }
    };
    Nodes nodes_of(const Axis& axis) const { return {nodes.data() + axis.first_node, axis.node_count}; }
    Buds buds_of(const Node& node) const { return {buds.data() + node.first_bud, node.bud_count}; }
};

}  // namespace spurwright
