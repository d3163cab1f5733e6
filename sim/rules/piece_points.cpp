#include "sim/rules/piece_points.h"

#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/bud_load.h"
#include "sim/rules/cane_count.h"
#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_end_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/cane_reach.h"
#include "sim/rules/cane_side.h"
#include "sim/rules/end_cut.h"
#include "sim/rules/internode_evenness.h"
#include "sim/rules/internode_length.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/spur_buds.h"
#include "sim/rules/spur_direction.h"
#include "sim/rules/spur_place.h"
#include "sim/rules/spur_size.h"
#include "sim/rules/tying.h"
#include "sim/rules/wood_age.h"

namespace spurwright::rules {

std::array<RuleMark, cane_rule_count> cane_marks(const CaneFacts& cane, const HouseRules& house, bool short_load) {
    return {{
        {RuleName::cane_diameter, mark_cane_diameter(cane, house)},
        {RuleName::cane_end_diameter, mark_cane_end_diameter(cane, house)},
        {RuleName::internode_length, mark_internode_length(cane, house)},
        {RuleName::internode_evenness, mark_internode_evenness(cane, house)},
        {RuleName::origin_distance, mark_origin_distance(cane.distance_to_head, cane.creep, house)},
        {RuleName::origin_height, mark_origin_height(cane, house)},
        {RuleName::cane_side, mark_cane_side(cane, house)},
        {RuleName::wood_age, mark_wood_age(cane)},
        {RuleName::cane_health, mark_cane_health(cane, house)},
        {RuleName::cane_reach, mark_cane_reach(cane, house, short_load)},
        {RuleName::end_cut, mark_end_cut(cane.end, house)},
        {RuleName::tying, mark_tying(cane, house)},
    }};
}

Tenths cane_points(const CaneFacts& cane, const HouseRules& house, const Asked& asked, bool short_load) {
    Tenths sum;
    for (const RuleMark& m : cane_marks(cane, house, short_load))
        sum += points_of(asked.of_cane(m.rule, cane.side), m.mark);
    return sum;
}

std::array<RuleMark, spur_rule_count> spur_marks(const SpurFacts& spur, const HouseRules& house) {
    return {{
        {RuleName::spur_count, full_mark},
        {RuleName::spur_buds, mark_spur_buds(spur, house)},
        {RuleName::spur_size, mark_spur_size(spur, house)},
        {RuleName::spur_direction, mark_spur_direction(spur, house)},
        {RuleName::end_cut, mark_end_cut(spur.end, house)},
    }};
}

Tenths spur_points(const SpurFacts& spur, const HouseRules& house, const Asked& asked) {
    Tenths sum;
    for (const RuleMark& m : spur_marks(spur, house)) sum += points_of(asked.of_spur(m.rule, spur.side), m.mark);
    return sum;
}

Tenths place_points(const SpurPlaceFacts& place, Side side, const HouseRules& house, const Asked& asked) {
    return points_of(asked.of_spur(RuleName::spur_place, side), mark_spur_place(place, house));
}

Tenths row_place_points(const RowPlaceFacts& place, Side side, const HouseRules& house, const Asked& asked) {
    return points_of(asked.of_spur(RuleName::spur_place, side), mark_row_place(place, house));
}

Tenths load_points(const LoadFacts& load, const HouseRules& house, const Asked& asked) {
    const Tenths points = points_of(asked.of_vine(RuleName::bud_load), mark_bud_load(load, house));
    const Tenths adjusted = asked.of_vine(RuleName::bud_kill_adjust);
    return adjusted.count ? points + points_of(adjusted, mark_bud_kill_adjust(load, house)) : points;
}

Tenths pair_points(const PairFacts& pair, const Asked& asked) {
    const auto marks = marks_cane_count(pair, asked);
    Tenths sum;
    for (const Side side : both_sides)
        sum += points_of(asked.of_cane(RuleName::cane_count, side), marks[index_of(side)]);
    return sum + points_of(asked.of_vine(RuleName::suckers), pair.sucker_laid ? no_mark : full_mark);
}

Tenths canonical_points(const Asked& asked) {
    return asked.of_vine(RuleName::old_wood_stub) + asked.of_vine(RuleName::wound_size) +
           asked.of_vine(RuleName::tool_choice) + asked.of_vine(RuleName::wood_left_behind) +
           asked.of_vine(RuleName::kicker_kept) + asked.of_vine(RuleName::kicker_absent) +
           asked.of_vine(RuleName::prunings_weighed);
}

}  // namespace spurwright::rules
