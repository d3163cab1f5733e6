// The wires and neighbours of a site as rows of the vine.
#pragma once

#include "sim/growth/site.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

// Heights rise with the ids: drip line, fruiting wire, pairs of catch wires.
std::vector<Wire> wires_of(const Site& site);

// Left, right: a vine whose cane reaches half the spacing less 50 mm, or none.
std::array<Neighbour, 2> neighbours_of(const Site& site);

} // namespace spurwright::growth
