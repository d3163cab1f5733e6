// How old wood thickens over a season (steps G15 to G17): laid canes, arms, trunk, and the area rule as a floor.
#pragma once

#include "sim/growth/next_vine.h"
#include "sim/growth/season.h"

namespace spurwright::growth {

// Own rings of the old wood.
void add_rings(NextVine& next, const Constants& constants);

// At every junction the wood below has at least the section of the axes borne there and, in wood of three years and
// older, of those borne further out on the same axis; but for a crowd of them a season lays on a wide ring at most: on an
// unpruned vine wood cannot follow at once. After all shoots stand.
void hold_area_rule(NextVine& next, const Constants& constants);

// Dead: old wood without a live axis or a live bud on it.
void mark_dead_wood(NextVine& next);

} // namespace spurwright::growth
