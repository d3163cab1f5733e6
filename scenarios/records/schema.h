// The tables of the store and their version. Every table that a person writes to has triggers that note each change with
// the row before and after, so that no act is without its history and each can be undone.
#pragma once

#include <array>
#include <string_view>

#include "scenarios/records/store.h"

namespace spurwright::records {

inline constexpr int store_version = 1;

// A table whose changes are noted; the first `keys` columns name a row.
struct NotedTable {
    std::string_view name;
    std::size_t keys;
    std::vector<std::string_view> columns;
};
const std::vector<NotedTable>& noted_tables();

// Makes the tables of an empty store; brings an older one up to date after a copy. Refuses a newer one.
[[nodiscard]] Result<void> bring_up_to_date(Store& store);

// Refuses a file that is no store (bad_file) or one of a newer program (newer).
[[nodiscard]] Result<void> check_version(Store& store);

} // namespace spurwright::records
