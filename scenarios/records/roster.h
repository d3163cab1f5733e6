// A roster as a file: number, name, language, crew, start. Read before anything is written, so that it can be looked at
// first; good rows go in, the others are named.
#pragma once

#include "scenarios/records/people.h"
#include "scenarios/records/table_import.h"

namespace spurwright::records {

inline constexpr std::size_t most_people = 10'000; // rows of a file; our choice

struct RosterRow {
    int line = 0;
    RowFate fate{};
    Person person;
};

struct Roster {
    std::vector<RosterRow> rows; // the good ones, in their order
    std::vector<RefusedRow> refused;
    ImportCounts counts;
    std::string heading; // the file's first line
};

// What a file would do to these people. `languages`: those a person may have. Refused whole (bad_file): what CsvReader and
// Columns refuse, more rows than most_people. Of two rows with one number the first stays.
[[nodiscard]] Result<Roster> read_roster(std::string_view text, const std::string& source, const std::vector<Person>& people, const std::vector<std::string_view>& languages);

// Puts the good rows in, all in one act; none where nothing is new.
[[nodiscard]] Result<void> take_in(Store& store, const Roster& roster, const std::string& when_utc);

std::string roster_csv(const std::vector<Person>& people);

} // namespace spurwright::records
