// How finely a mesh is built. Two fixed levels, our choice: for a machine that draws in software, and fine.
#pragma once

namespace spurwright::mesh {

struct Detail {
    int thin_sides, cane_sides, thick_sides, trunk_sides; // radius < 2 mm, 2-5 mm, 5-12 mm, above
    int rings_a_joint;                                    // at least 3
    int bud_rings, bud_sides;
    int tendril_steps;
    int strips; // loose bark on the trunk
    int straw_cards;
    double soil_step; // metres, near the vine

    int sides(double radius) const {
        return radius < 0.002 ? thin_sides : radius < 0.005 ? cane_sides : radius < 0.012 ? thick_sides : trunk_sides;
    }
};

inline constexpr Detail slow_detail{3, 6, 7, 14, 4, 3, 5, 7, 60, 1400, 0.1};
inline constexpr Detail fine_detail{4, 8, 10, 24, 8, 5, 7, 16, 130, 7000, 0.05};

} // namespace spurwright::mesh
