// The facts of a vine that everyone measures alike: growth, pruning, rules, pictures and people. Derived from the
// tables, never stored. Lengths in micrometres, integer arithmetic throughout (halves are cut off).
#pragma once

#include <vector>

#include "sim/vine/vine.h"

namespace spurwright {

// House values that change what counts; the defaults are the general set's (memory 6 mm; our choice 250 mm).
struct CountingHabits {
    Length clear_joint{6'000};     // clear joint below a bud, for it to count
    Length sucker_zone{250'000};   // a cane on a trunk farther than this below the head is a sucker
};

// Which axes stand on which: children of an axis row, by node index then id. Cuts move no row, so one map serves a
// vine and everything pruned from it.
class BearingMap {
public:
    explicit BearingMap(const Vine& vine);
    struct Rows {
        const std::uint32_t* first;
        const std::uint32_t* last;
        const std::uint32_t* begin() const { return first; }
        const std::uint32_t* end() const { return last; }
        bool empty() const { return first == last; }
    };
    Rows borne_by(std::uint32_t axis_row) const {
        return {children_.data() + start_[axis_row], children_.data() + start_[axis_row + 1]};
    }
    std::uint32_t parent_row(std::uint32_t axis_row) const { return parent_[axis_row]; }  // own row for a trunk

private:
    std::vector<std::uint32_t> start_, children_, parent_;
};

std::uint32_t row_of(const Vine& vine, const Axis& axis);

int age(const Vine& vine, const Axis& axis);  // years: last summer's wood is 1
bool is_trunk(const Axis& axis);
bool is_lateral(const Vine& vine, const Axis& axis);  // one-year axis on wood of the same season
bool is_cane(const Vine& vine, const Axis& axis);     // one-year axis on older wood (suckers too)
bool on_rootstock(const Vine& vine, const Axis& axis);
bool is_sucker(const Vine& vine, const Axis& axis, const CountingHabits& habits = {});
bool is_water_shoot(const Vine& vine, const Axis& axis);  // cane borne by wood of age >= 3, or by a latent bud's place
bool is_double(const Vine& vine, const Axis& axis);       // one of two canes from one node
bool was_laid_last_winter(const Vine& vine, const Axis& axis);  // age 2 with a Laid row of winter - 1
bool was_spur_last_winter(const Vine& vine, const Axis& axis);  // age 2 without one, at most 3 nodes besides the crown

bool is_count_bud(const Vine& vine, const Axis& axis, const Node& node, const CountingHabits& habits = {});
// Count buds on nodes not removed, out to `last_index` (255: all).
int count_buds(const Vine& vine, const Axis& axis, const CountingHabits& habits = {}, std::uint32_t last_index = 255);
// Position of node `index` along its axis from the crown: sum of joints 1 to index.
Length along(const Vine& vine, const Axis& axis, std::uint32_t index);
// Indices of the count buds that stand within the ripe length, ascending.
std::vector<std::uint32_t> ripe_count_nodes(const Vine& vine, const Axis& axis, const CountingHabits& habits = {});

// Along the wood from a node to the crown point of its side. For a trunk node `side` says whose.
Length distance_to_head(const Vine& vine, NodeId from, Side side);
// Of a cane: from its parent node, to the crown point of its own side.
Length distance_to_head(const Vine& vine, const Axis& cane);
std::optional<Length> creep(const Vine& vine, const Axis& cane);  // distance minus last winter's origin on that side

Length fruiting_wire_height(const Vine& vine);            // the lowest fruiting wire
Length below_wire(const Vine& vine, const Axis& axis);    // positive below

Length mean_diameter(const Node& node);                       // (major + minor) / 2
Length thickness(const Vine& vine, const Axis& axis);         // over joints 2 and 3 (those present, else 1, else the collar)
Length mean_internode(const Vine& vine, const Axis& axis, const CountingHabits& habits = {});  // uncut: first count bud to the ripe end; 0 if fewer than 2 nodes
Angle base_azimuth(const Vine& vine, const Axis& axis, Side side);  // 0 along the row of that side, 180 against it
// The lowest node index of one-year wood that a person calls the first joint above the collar.
Length first_joint_diameter(const Vine& vine, const Axis& axis);
Length end_diameter(const Vine& vine, const Axis& axis);  // of the last joint within the ripe length

// Rows of the canes with >= `least` ripe count buds, live and not removed, by id.
std::vector<AxisId> cane_candidates(const Vine& vine, const CountingHabits& habits = {}, int least = 4);

}  // namespace spurwright
