// What people read for an edit: "cut cane a12 past its node 9". Text keys and arguments; the sentence is made in words/.
#pragma once

#include "sim/pruning/plan.h"
#include "sim/vine/vine.h"

namespace spurwright::practice {

struct NamedAct {
    TextKey key;  // act.cut, act.cut-off, act.cut-beyond, act.lay, act.tie, act.mark, act.unmark
    Arguments arguments;
};

// `after`: the vine with the edit done, to name what a cut leaves standing at its place.
NamedAct named(const Edit& edit, const Vine& after);

}  // namespace spurwright::practice
