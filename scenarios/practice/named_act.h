// What people read for an edit: "cut cane a12 past its node 9". Text keys and arguments; the sentence is made in words/.
#pragma once

#include "sim/pruning/plan.h"

namespace spurwright::practice {

struct NamedAct {
    TextKey key;  // act.cut, act.cut-off, act.lay, act.tie, act.mark, act.unmark
    Arguments arguments;
};

NamedAct named(const Edit& edit);

}  // namespace spurwright::practice
