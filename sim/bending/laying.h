// A cane brought down along a wire: the rod from its base, held there as it grew, to the tie, where it lies level on the
// wire; from there on it runs along it. The hand lets it slide along the wire and keeps its arch low. Plain numbers in
// and out, never a vine. Millimetres, in the one plane of the cane and the wire: x along the wire towards the
// laid side, y up, the base at the origin.
#pragma once

#include <cstdint>
#include <vector>

#include "sim/bending/rod.h"

namespace spurwright::bending {

// A cane as it stands. Joint i runs from node i to node i + 1; `way` is the way it points at each node, a unit vector
// without its zigzag: (1, 0) along the wire, (0, 1) straight off it. `joint` and `diameter` are of equal size, at least
// 1; `way` has one more.
struct Grown {
    std::vector<double> joint;     // mm, above 0
    std::vector<double> diameter;  // mm, above 0, of each joint
    std::vector<Flat> way;
};

// Length of a joint; past the tip of a cane that is too short for its tie, of those it is thought to have there.
double joint_of(const Grown& cane, std::uint32_t i);

struct WireAbove {
    double height = 0;   // mm over the base; negative where the cane starts above the wire
    double ceiling = 0;  // mm over the base: no part of the arch is higher; at least `height`
};

inline constexpr double arch_over_wire = 20.0;    // mm that the arch may rise above the wire (our choice)
inline constexpr double least_hand_radius = 120;  // mm: a hand bends no tighter over a quarter turn, whatever the rise (our choice)

// The ceiling a hand gives: 20 mm over the wire, or as high as an arc of 120 mm over a quarter turn (less for more than
// a quarter) takes a cane that leaves at this angle.
double hand_ceiling(double wire_height, Flat leaving);

// The steepest way over the cane's lowest 300 mm (our choice): how it leaves its base.
Flat leaving_way(const Grown& cane);

// Strains as shares, not percent. Nodes by index; a tie past the tip of a short cane is meant as if the cane ran on.
struct LaidCane {
    std::uint32_t tie = 0;
    double strain = 0;        // the largest of the cane's own wood
    std::uint32_t worst = 0;  // outer node of the joint it is in; 1 at the base
    std::vector<Flat> at;     // of each node
    bool settled = false;     // false: cannot be brought there, `strain` is infinite and `at` is empty
};

// A cane in the hand, on its way down: no tie yet.
struct HeldCane {
    double strain = 0;        // as in LaidCane
    std::uint32_t worst = 1;
    std::vector<Flat> at;     // of each node
    std::vector<Flat> line;   // the centre line up to the hand, by its segments, then from node to node
    bool settled = false;     // false: the hand asks for more than the wood can do; the rest is as near as it came
};

// Keeps memory from cane to cane.
class LayingHand {
public:
    // Tied at this node, at least 1.
    void tied_at(const Grown& cane, const WireAbove& wire, std::uint32_t tie, LaidCane& laid);
    // Tied where the strain is least, as far as steps from node to node find it from where an arc would come down.
    void least(const Grown& cane, const WireAbove& wire, LaidCane& laid);

    // Held at this node, at least 1, and pulled down by this share of the way from where it stands to the wire, 0 to 1; a
    // node that stands no higher than the wire stays as high as it is. The node is free to turn and to slide along the
    // wire; as it comes down the other hand brings the arch under the ceiling. Beyond the hand the cane runs on as it grew.
    void held_at(const Grown& cane, const WireAbove& wire, std::uint32_t node, double pulled, HeldCane& held);

private:
    void cut_up(const Grown& cane, std::uint32_t tie);
    double diameter_of(const Grown& cane, std::uint32_t i) const;
    Flat way_of(const Grown& cane, std::uint32_t node) const;

    RodSolver solver_;
    Rod rod_;
    Loads loads_;
    Bent bent_;
    std::vector<std::uint32_t> pieces_;  // segments of each joint
    std::vector<double> thick_;          // diameter at each bend
};

}  // namespace spurwright::bending
