// The crew: a number each, and what goes with it. The one table with names; everything else holds the number alone.
#pragma once

#include "scenarios/records/store.h"

namespace spurwright::records {

struct Person {
    std::int64_t number = 0; // 1 to highest_number
    std::string name;        // may be empty: a number is enough for everything
    std::string language;    // "es", "es-CL", ...
    std::string crew;        // may be empty
    std::string start;       // "2026-01-31"; empty: not told
    bool operator==(const Person&) const = default;
};
inline constexpr std::int64_t highest_number = 999'999'999;

[[nodiscard]] Result<std::vector<Person>> people_of(Store& store); // by number
[[nodiscard]] Result<void> put_person(Store& store, const Person& person); // new, or in place of the one of that number

// What forgetting somebody left behind.
struct Forgotten {
    std::int64_t events_removed = 0, events_kept = 0; // kept: under another, drawn number
};
// Takes the person out of the list, its history and every copy made before, for good. Events go too, or stay without the
// number (`keep_results`). Refused (unknown_part, "--"): nobody and nothing has that number.
[[nodiscard]] Result<Forgotten> forget_person(Store& store, std::int64_t number, bool keep_results, const std::string& when_utc);

} // namespace spurwright::records
