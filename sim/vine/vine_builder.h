// The only writer of whole vines: growth, the vine file reader and hand-drawn tests add rows here, in any order of
// axes; build() sorts them, links the rows and works out order and side where they were left out.
#pragma once

#include "sim/core/error.h"
#include "sim/vine/vine.h"

namespace spurwright {

class VineBuilder {
public:
    Vine vine;  // everything but axes, nodes and buds is set here directly

    // Adds an axis and returns the rows being added to, valid until the next call. Node 0 must be added first.
    Axis& add_axis(AxisId id, NodeId parent, int born);
    // The next node of the axis added last.
    Node& add_node(Length joint, Length major, Length minor, Place place = {});
    // A bud of the node added last; slots run from 0.
    Bud& add_bud(BudKind kind, Points points = Points::outward);

    // Sorts, links, fills `order` and (where `find_sides` is set) `side`, and the crown points and graft left out:
    // crown points fall to the head. Fails with the first broken invariant of vine_check.h. The builder is spent.
    [[nodiscard]] Result<Vine> build(bool find_sides = false);

private:
    struct Rows {
        Axis axis;
        std::vector<Node> nodes;
        std::vector<std::vector<Bud>> buds;
    };
    std::vector<Rows> rows_;
};

// Sets first_node, node_count, first_bud and bud_count from the sorted tables, and opens a new book of courses. For those who copy tables (season).
void link_rows(Vine& vine);

// The side of an axis: the parent's; for an axis straight from a trunk the side whose crown point alone
// stands on that trunk, else the sign of x of its node 1 (node 0 where it has no more) against the head, equal: left.
Side side_by_place(const Vine& vine, const Axis& axis);

}  // namespace spurwright
