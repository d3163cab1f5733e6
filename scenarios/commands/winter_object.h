// A winter to come as programs read it. The same for every verb that looks ahead.
#pragma once

#include "scenarios/ahead/look_ahead.h"
#include "scenarios/io/json.h"

namespace spurwright::commands {

int decimals_of(ahead::Figure figure);

// {"winter", one spread a figure}; a spread is {"median", "low", "high"}, null where no draw gave a number.
io::Json winter_object(const ahead::AheadWinter& winter);

} // namespace spurwright::commands
