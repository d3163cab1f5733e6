// Small vines drawn by hand, each for one thing that a search can trip over, small enough for every choice to be
// carried out and judged. Frame as on every vine; the fruiting wire stands at 0.9 m, the head at 0.8 m.
#pragma once

#include <string_view>
#include <vector>

#include "sim/vine/vine.h"

namespace spurwright::test {

// Every cane stands on the near-post arm; the far-post side has only a thin shoot without enough buds.
//
//   a4 a5 a6            a8
//    |  |  |            |
//  --a2-----'-- head --a3
//               |
Vine one_sided_vine();

// A trunk sucker and a rootstock sucker, both long enough to lay, and a short one that is not.
//
//    a4  a5 |  | a6  a7
//     `-a2-- head --a3-'
//            |-- a8      300 mm below the head: a sucker with buds
//            |- a10      one below it with two
//         ---+--- graft
//            |-- a9      rootstock
Vine sucker_vine();

// Three years old: no arms, no two-year wood but one stub; canes straight from the head.
//
//    a2 \ | a3 / a4
//        head
Vine young_vine();

// Canes with laterals, visibly dead buds, a spot, green tips and short joints; one dead cane; two-year wood with an old
// lateral; old arms on both sides; twin canes from one node; one cane on each arm's old wood.
Vine rough_vine();

// Trained to a single cane: last winter's, a2, lay towards the near post; its spur, a3, brought up a6 and a7. The next
// trunks stand 1.2 m away and have no cane of their own this way.
//
//    a4  a5             a7          count buds: a4 5, a5 2, a6 6, a7 4
//     |   |             /
//  --a2---'-- head --a3'--a6
//              |
Vine single_cane_vine();

// A spur cordon of six winters, its arms a2 and a3 laid in the third. Each | is a cane of last summer on the old spur or the
// arm below it; a17 comes straight from the arm.
//
//     a13
//  a12 |   a11    a10              a14 a15       a16       count buds: four each, but a12 2 and a17 3
//     \|    |      | a9        a17  | /           |
//      a6   a5     a4           |   a7           a8
//  --a2-.---.--.---.-- head --.-.---.-----.------.-- a3
//
Vine cordon_vine();

struct NamedVine {
    std::string_view name;
    Vine vine;
};
// The four above and the little vine.
std::vector<NamedVine> small_vines();

}  // namespace spurwright::test
