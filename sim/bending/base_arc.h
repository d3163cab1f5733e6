// The elbow-and-arc form of laying a cane: one arc of constant curvature from the way the cane leaves its base into
// the direction of the wire, then a straight run onto and along the wire. Plain numbers in and out, never a vine: the
// rod solver will fill the same shape. Millimetres, radians; x towards the laid side, y up, z across.
// The numbers below are our choice (DEVELOPERS.md, decision 5).
#pragma once

#include <vector>

namespace spurwright::bending {

struct Point { double x = 0, y = 0, z = 0; };

struct BaseArc {
    Point start;         // the crown of the cane
    Point direction;     // unit: the way it leaves
    double radius = 0;   // mm
    double turn = 0;     // radians turned from `direction` into the row
    double wire = 0;     // height of the wire above the start, mm; negative where the cane starts above it
    // Worked out once by base_arc(), since every node of a cane asks for them.
    double sine = 0, cosine = 1;  // of the turn
    Point end;                    // of the bent part
};

inline constexpr double arch_over_wire = 20.0;    // mm the arc may rise above the wire (our choice)
inline constexpr double least_hand_radius = 120;  // mm: a quarter turn over the hand, whatever the rise (our choice)
inline constexpr double approach = 300.0;         // mm along the row from the end of the arc down onto the wire (our choice)

// `direction` need not be of unit length. A cane that already points along the row has turn 0 and no curvature.
BaseArc base_arc(const Point& start, const Point& direction, double wire_above_start);

// Largest strain of a cane of this diameter (mm) on the arc: d / (2 R), 0 where there is no turn. A share, not percent.
double arc_strain(const BaseArc& arc, double diameter);

// Point at arc length s (mm) from the start: arc, then straight down (or up) onto the wire, then along it.
Point point_at(const BaseArc& arc, double s);

}  // namespace spurwright::bending
