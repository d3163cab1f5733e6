// Rosters: whatever the bytes, every row is good or refused with its line and a reason, good rows are unique and inside
// their limits, and what is written of them reads back the same.
#include "scenarios/records/roster.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;
using namespace spurwright::records;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::vector<std::string_view> languages{"en", "es", "es-CL"};
    const auto roster = read_roster(fuzz::text(data, size), "crew.csv", {}, languages);
    if (!roster) {
        SPURWRIGHT_CHECK(roster.error().where.source, ==, std::string("crew.csv"));
        SPURWRIGHT_CHECK(roster.error().where.line, >=, 1);
        return 0;
    }
    std::vector<Person> people;
    int line = 1;
    for (const RosterRow& row : roster->rows) {
        SPURWRIGHT_CHECK(row.line, >, line);
        line = row.line;
        SPURWRIGHT_CHECK(row.person.number, >=, std::int64_t{1});
        SPURWRIGHT_CHECK(row.person.number, <=, highest_number);
        for (const Person& other : people) SPURWRIGHT_CHECK(other.number, !=, row.person.number);
        if (people.size() < 200) people.push_back(row.person);
    }
    for (const RefusedRow& row : roster->refused) {
        SPURWRIGHT_CHECK(row.line, >=, 2);
        SPURWRIGHT_CHECK(row.reason.name.empty(), ==, false);
    }
    const auto again = read_roster(roster_csv(people), "again.csv", people, languages);
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK(again->refused.size(), ==, std::size_t{0});
    SPURWRIGHT_CHECK(again->counts.same, ==, static_cast<std::int64_t>(people.size()));
    return 0;
}
