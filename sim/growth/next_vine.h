// Next winter's vine while it is being written: its tables, with the buds kept apart until all wood stands. Inner to
// sim/growth: season() and training() write through it.
#pragma once

#include <vector>

#include "sim/vine/vine.h"

namespace spurwright::growth {

// The winter bud of a node of new wood.
struct NewBud {
    Points points{};
    bool alive = true;
};

struct NextVine {
    Vine vine;                        // buds empty until finish()
    std::vector<std::uint8_t> latent; // of every old node row: its latent buds
    std::vector<NewBud> buds;         // of every new node row
    std::size_t old_axes = 0, old_nodes = 0;

    bool is_old(std::size_t axis_row) const { return axis_row < old_axes; }
    std::uint8_t& latent_at(NodeId node);
    AxisId next_axis_id() const; // after every id given so far
    std::uint32_t highest_id = 0;

    // Adds a new axis and returns its row; nodes follow by add_node, all of one axis before the next.
    std::size_t add_axis(NodeId parent, Side side);
    Node& add_node(Length joint, Length major, Length minor, const Place& place, NewBud bud);
    void drop_last_axis(); // a shoot of which nothing is left: its name is not used again

    // Writes the bud rows: latent buds of old nodes, `base_buds` crown buds and the winter buds of new ones.
    void finish(int base_buds);
};

// The old wood of a pruned vine, as it enters the next season: cut wood gone, stubs of one ring overgrown (their base
// buds and their scar pass to the node that bore them), ties sunk, last winter's origins noted.
NextVine carry_over(const Vine& pruned);

} // namespace spurwright::growth
