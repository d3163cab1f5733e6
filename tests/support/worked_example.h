// An invented vine, written down as facts instead of wood, whose marks were worked out on paper: spacing 1.2 m, no
// neighbour shown, wire at 900 mm, five canes and a short trunk shoot. Last winter's laid canes: u5 (left, carries a13)
// and u6 (right, carries nothing alive).
//
//   axis  stands on                     count buds, all ripe  thickness  to the head  below the wire
//   a11   last winter's left spur, upper       10                9.0         60            120
//   a12   last winter's left spur, lower        8                7.2         45            140
//   a13   u5, far out                           9               10.4        190             40
//   a21   last winter's right spur              9                7.6         50            110
//   a22   the head, right, low                  6                6.0         30            170
//   a31   the trunk: no count bud
#pragma once

#include <vector>

#include "sim/rules/asked.h"
#include "sim/rules/measure_plan.h"

namespace spurwright::test {

struct WorkedCane {
    AxisId axis;
    Side side{};
    int buds = 0;
    Length diameter, first_joint, joint, distance, below;
    Angle off_row;                  // laid to its own side
    Length thinner_by;              // the end loses this a bud
    Length own_start, other_start;  // reach after bud n: joint x n + start, by side
};

const std::vector<WorkedCane>& worked_canes();
const WorkedCane& worked_cane(int axis);

inline constexpr Length worked_spacing{1'200'000};

// Cut after its n-th count bud, 20 mm beyond, laid cleanly to `side`.
rules::CaneFacts worked_cane_facts(const WorkedCane& cane, Side side, int n, const rules::HouseRules& house);
// Cut to `buds` count buds.
rules::SpurFacts worked_spur_facts(const WorkedCane& cane, int buds);

// What the vine offers; without a31 no sucker stands.
rules::Offers worked_offers(const rules::HouseRules& house, bool with_sucker = true);

// A clean plan: canes after bud n (n 0: none), spurs of that many buds, u5, u6 and a31 off. By side.
struct WorkedChoice {
    int left_cane = 0, left_n = 0, right_cane = 0, right_n = 0;
    int left_spur = 0, left_buds = 0, right_spur = 0, right_buds = 0;
};
rules::PlanFacts worked_plan(const WorkedChoice& choice, const rules::HouseRules& house);

}  // namespace spurwright::test
