// What a stop in the middle of forgetting somebody leaves to do (people.h forgets).
#pragma once

#include "scenarios/records/store.h"

namespace spurwright::records {

// Copies and the file's free pages that still hold the name go; nothing where nobody was being forgotten.
[[nodiscard]] Result<void> finish_forgetting(Store& store);

[[nodiscard]] Result<bool> is_known(Store& store, std::int64_t number); // to the list of people or to an event

} // namespace spurwright::records
