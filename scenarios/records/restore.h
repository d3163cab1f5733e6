// A copy of the records made, and put back in place of them. What is there before is kept aside in the folder of copies.
#pragma once

#include "scenarios/records/backup.h"
#include "scenarios/records/replay.h"

namespace spurwright::records {

// A copy under a name that nobody has yet (cannot_write where somebody does): whole and on the disk, or not there.
[[nodiscard]] Result<void> write_copy(Store& store, const std::string& file);

// Those of a day, and what was kept aside when a copy was put back; paths by name.
std::vector<std::string> copies_of(const Store& store);

// The whole store read, every event with what it needs; check_records reads every copy beside it too.
[[nodiscard]] Result<Checked> check_contents(Store& store);

// Everything that the store at `from` holds in place of what `store` holds: all of it or nothing, whoever else has it open.
// Refused (cannot_write) while another program writes, for 5 seconds. In store.cpp, which knows the library.
[[nodiscard]] Result<void> become(Store& store, const std::string& from);

// Puts all that `copy` holds in place of what `store` holds, which goes into the folder of copies first, as
// "before-2026-01-31.sqlite"; its path. Old or new, never between.
[[nodiscard]] Result<std::string> put_back(Store& store, Store& copy, const Day& today);

// The same where the store at `path` cannot be opened as one: its files go aside as they are, "damaged-2026-01-31.sqlite".
[[nodiscard]] Result<std::string> put_back_over_damaged(const std::string& path, Store& copy, const Day& today);

} // namespace spurwright::records
