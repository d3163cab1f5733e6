// Every check's computing, by what it is about. Inner to sim/checks; the list with sources and groups is
// check_list.cpp.
#pragma once

#include <vector>

#include "sim/checks/check.h"

namespace spurwright::checks {

using Numbers = std::vector<Compared>;

// The planar rod and the section of a cane.
Numbers elastica_up(), elastica_along(), sag(), ring(), skin(), cutting_force(), laid_default_cane();
// Frames of tubes.
Numbers helix_frames();
// Cold, budbreak, frost, and the days of shoots.
Numbers hardiness_steps(), hardiest_bud(), budbreak_order(), budbreak_day(), frost_at_burst(), cutting_delay(),
    nodes_at_bloom(), kicker_delays_nothing();
// Laws against published trials, by vines of mean shoots.
Numbers thin_parent(), fat_parent(), oakville_single(), oakville_quad(), shoot_geometry(), leaf_area(),
    non_count_at_loads(), blind_nodes(), first_year_yield(), later_yields(), overload_memory(), sunmuscat_shoots(),
    sunmuscat_bunches(), sultana_canes(), concord_balance(), cut_reach(), more_nodes_thinner();
// One vine's wood.
Numbers ideal_cane(), dry_share(), area_rule(), tendril_pattern(), weight_conserved(), summer_conserved();
// Crowds of vines.
Numbers history_true(), default_vines(), cane_count(), rules_unheard(), studied_diameters(), row_variance(),
    head_held();
// Buds to keep.
Numbers balanced_buds(), effective_shoots();

} // namespace spurwright::checks
