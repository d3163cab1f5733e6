// A vine and a plan seen from the other side of the row: what a rule says must not change.
#pragma once

#include "sim/pruning/plan.h"

namespace spurwright::test {

Vine mirrored(Vine vine);
Plan mirrored(Plan plan);

}  // namespace spurwright::test
