// The verb `picture`: a vine, a plan where one is given, one PNG; and what every verb that draws reads alike.
#pragma once

#include "render/app/picture.h"
#include "scenarios/commands/verb.h"

namespace spurwright::app {

commands::Verb picture();

// --size, --view and --light. Refused by option.
[[nodiscard]] Result<PictureWish> picture_wish(const commands::Asked& asked);

// The vine of CODE|FILE, after --plan where one is given.
[[nodiscard]] Result<Vine> vine_asked(const commands::Asked& asked);

}  // namespace spurwright::app
