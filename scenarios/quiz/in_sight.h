// Whether a place on standing wood can be seen by somebody in the row who bends to it: no other wood of the vine lies
// before it. Wires and ties hide nothing. Must not know: cameras, pictures.
#pragma once

#include "sim/vine/vine.h"

namespace spurwright::quiz {

// `joint` stands; its middle is looked at, from the near side of the row.
bool in_sight(const Vine& vine, NodeId joint);

}  // namespace spurwright::quiz
