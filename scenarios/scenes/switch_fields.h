// A generator switch of a scene file: its name and its own numbers. Must not know: what it does to a vine.
#pragma once

#include "scenarios/io/json_fields.h"
#include "sim/growth/tempt.h"

namespace spurwright::scenes {

// Refuses an unknown name and a number that belongs to another switch; numbers left out are the switch's own.
growth::Temptation read_switch(io::Refusal& refusal, const io::Json& object);

} // namespace spurwright::scenes
