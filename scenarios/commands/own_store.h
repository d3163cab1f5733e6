// The store of this person, opened for a verb.
#pragma once

#include "scenarios/records/store.h"

namespace spurwright::commands {

// To write: made where there is none, with its copy of the day.
[[nodiscard]] Result<records::Store> own_store();

// To read: nothing, and no folder made, where nothing was ever kept.
[[nodiscard]] Result<std::optional<records::Store>> own_store_to_read();

} // namespace spurwright::commands
