#include "sim/rules/rule_list.h"

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
#include "sim/rules/kickers.h"
#include "sim/rules/old_wood_stub.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/prunings_weighed.h"
#include "sim/rules/spur_buds.h"
#include "sim/rules/spur_count.h"
#include "sim/rules/spur_direction.h"
#include "sim/rules/spur_place.h"
#include "sim/rules/spur_size.h"
#include "sim/rules/suckers.h"
#include "sim/rules/tool_choice.h"
#include "sim/rules/tying.h"
#include "sim/rules/wood_age.h"
#include "sim/rules/wood_left_behind.h"
#include "sim/rules/wound_size.h"

namespace spurwright::rules {

const std::array<const Rule*, rule_count> all_rules{
    &cane_diameter,
    &cane_end_diameter,
    &internode_length,
    &internode_evenness,
    &origin_distance,
    &origin_height,
    &cane_side,
    &wood_age,
    &cane_health,
    &bud_load,
    &cane_reach,
    &cane_count,
    &spur_count,
    &spur_buds,
    &spur_place,
    &spur_size,
    &spur_direction,
    &end_cut,
    &old_wood_stub,
    &wound_size,
    &tool_choice,
    &wood_left_behind,
    &suckers,
    &tying,
    &kicker_kept,
    &kicker_absent,
    &bud_kill_adjust,
    &prunings_weighed,
};

}  // namespace spurwright::rules
