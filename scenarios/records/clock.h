// The clock of the records: time as it is noted, and the day today. Handed in as values, so that tests choose them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace spurwright::records {

std::string utc_now(); // "2026-01-31T07:45:12Z"

struct Day {
    int year = 0, month = 0, day = 0;
    auto operator<=>(const Day&) const = default;
};

Day today(); // by this machine's own zone

// "2026-01-31", of the years 1900 to 2199; nothing where the text is no such day.
std::optional<Day> read_day(std::string_view text);
std::string day_text(const Day& day);

} // namespace spurwright::records
