// A vine by its history: planted, trained, then pruned and grown year by year by the same prune() the learner uses, so
// that every trace on it is true. The same site gives the same vine on every machine.
#pragma once

#include "sim/growth/site.h"
#include "sim/vine/vine.h"

namespace spurwright::growth {

// The vine in winter `site.age`, uncut. Refused like check(site), and where years without pruning outgrew the tables.
[[nodiscard]] Result<Vine> grow_vine(const Site& site);

// The same of a vine of 1 or 2 winters as well: one shoot, or an untopped stem. Only replants are so young.
[[nodiscard]] Result<Vine> grow_vine_of_any_age(const Site& site);

// A vine that was pruned in winter `site.age` - 1 and grew nothing since: its wood stands, dead.
[[nodiscard]] Result<Vine> grow_dead_vine(const Site& site);

// The stages of the same, for tests and for films of a life: every uncut vine from winter 3 to `site.age`.
[[nodiscard]] Result<std::vector<Vine>> grow_winters(const Site& site);

} // namespace spurwright::growth
