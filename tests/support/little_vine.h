// The little vine, drawn by hand: few canes and one pair of catch wires, so that everything on it can be counted.
//
//     |a5      |a4      |a6  |a7       each | is a cane of one-year wood: count buds
//     |        |        |    |         a5: 5, a4: 5, a6: 2, a7: 4
//  ===o========|========|====|======   fruiting wire w1, 0.9 m
//      `---a2--o        |    o         a2.1 (bears a4) just below the wire, a2.2 (bears a5) on it
//               \       |   /
//                \      o--'  a3       a3.1 bears a6, a3.2 bears a7
//                 \    /
//                  `-o-'               head a1.2, at 0.8 m
//                    |
//                    | a1              trunk
//   near post  <-----+----->  far post
#pragma once

#include "sim/vine/vine.h"

namespace spurwright::test {

Vine little_vine();

}  // namespace spurwright::test
