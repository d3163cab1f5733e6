// Copies of the store, one a day, made before the first act of that day.
#pragma once

#include "scenarios/records/clock.h"
#include "scenarios/records/store.h"

namespace spurwright::records {

inline constexpr std::size_t most_backups = 14;

// In the folder `backups` beside the store; nothing where that day has one or the store holds nothing yet. Older ones
// beyond most_backups go. Whole or not there.
[[nodiscard]] Result<void> back_up_daily(Store& store, const Day& today);

// The store at `path`, copied as the day asks, to be written to.
[[nodiscard]] Result<Store> open_backed_up(const std::string& path, const Day& today);

// Every copy, as somebody is forgotten.
[[nodiscard]] Result<void> drop_backups(const Store& store);

std::vector<std::string> backups_of(const Store& store); // paths, the oldest first

} // namespace spurwright::records
