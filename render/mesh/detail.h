// How finely a mesh is built. Three fixed levels: while the camera moves on a slow machine, at rest there, and fine.
#pragma once

namespace spurwright::mesh {

struct Detail {
    int thin_sides, cane_sides, thick_sides, trunk_sides;  // radius < 2 mm, 2-5 mm, 5-12 mm, above
    int rings_a_joint;                                     // 3, 6 or 10
    int bud_rings, bud_sides;
    int tendril_steps;
    int strips;       // loose bark on the trunk
    int straw_cards;

    int sides(double radius) const {
        return radius < 0.002 ? thin_sides : radius < 0.005 ? cane_sides : radius < 0.012 ? thick_sides : trunk_sides;
    }
};

inline constexpr Detail moving_detail{3, 5, 6, 12, 3, 3, 4, 8, 30, 400};
inline constexpr Detail resting_detail{4, 6, 8, 16, 6, 4, 6, 12, 80, 1500};
inline constexpr Detail fine_detail{4, 8, 10, 24, 10, 6, 8, 18, 130, 4000};

}  // namespace spurwright::mesh
