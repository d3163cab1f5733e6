#include "scenarios/records/people.h"

#include <random>

#include "scenarios/records/act.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/forgetting.h"
#include "scenarios/records/readable_body.h"

namespace spurwright::records {
namespace {

Result<std::int64_t> count_of(Store& store, std::string_view sql, const Values& values) {
    const auto count = store.whole(sql, values);
    if (!count) return failure(count.error());
    return count->value_or(0);
}

// A number that nobody has: below zero, so that it can never be taken for one of the roster.
Result<std::int64_t> drawn_number(Store& store) {
    std::random_device device;
    while (true) {
        const std::int64_t number = -1 - static_cast<std::int64_t>((std::uint64_t{device()} << 20) ^ device());
        const auto taken = count_of(store, "SELECT count(*) FROM event WHERE person = ?1", {number});
        if (!taken) return failure(taken.error());
        if (*taken == 0) return number;
    }
}

} // namespace

Result<std::vector<Person>> people_of(Store& store) {
    std::vector<Person> people;
    auto read = store.each("SELECT number, name, language, crew, start FROM person ORDER BY number", {}, 5,
                           [&](const Row& row) { people.push_back({row.whole(0), row.text(1), row.text(2), row.text(3), row.text(4)}); });
    if (!read) return failure(read.error());
    return people;
}

Result<void> put_person(Store& store, const Person& person) {
    return store.run("INSERT INTO person VALUES(?1, ?2, ?3, ?4, ?5) ON CONFLICT(number) DO UPDATE SET name = excluded.name, language = excluded.language, crew = excluded.crew, "
                     "start = excluded.start",
                     {person.number, person.name, person.language, person.crew, text_or_null(person.start)});
}

Result<Forgotten> forget_person(Store& store, std::int64_t number, bool keep_results, const std::string& when_utc) {
    if (auto done = finish_forgetting(store); !done) return failure(done.error());
    const auto act = Act::begin(store, "crew-forget", when_utc);
    if (!act) return failure(act.error());
    const auto there = count_of(store, "SELECT count(*) FROM person WHERE number = ?1", {number});
    const auto events = count_of(store, "SELECT count(*) FROM event WHERE person = ?1", {number});
    if (!there) return failure(there.error());
    if (!events) return failure(events.error());
    if (*there + *events == 0) return failure({Fault::unknown_part, TextKey{"error.crew.nobody"}, {{"n", std::to_string(number)}}, {"crew forget", 0, 0, 0}});
    Forgotten forgotten;
    // Whom the person signed off keeps that; who signed is nobody any more.
    if (auto done = store.run("UPDATE event SET body = json_set(body, '$.by', NULL) WHERE " + in_body("by") + " = ?1", {number}); !done) return failure(done.error());
    if (keep_results) {
        const auto other = drawn_number(store);
        if (!other) return failure(other.error());
        if (auto done = store.run("UPDATE event SET person = ?1 WHERE person = ?2", {*other, number}); !done) return failure(done.error());
        forgotten.events_kept = *events;
    } else {
        // What corrects one of them goes with it: it says what was said.
        auto done = store.run("WITH RECURSIVE gone(id) AS (SELECT id FROM event WHERE person = ?1 UNION SELECT event.id FROM event JOIN gone ON event.corrects = gone.id) "
                              "DELETE FROM event WHERE id IN (SELECT id FROM gone)",
                              {number});
        if (!done) return failure(done.error());
        forgotten.events_removed = *events;
    }
    if (auto done = store.run("DELETE FROM person WHERE number = ?1", {number}); !done) return failure(done.error());
    if (auto done = store.run("DELETE FROM change WHERE tab = 'person' AND row_key = ?1", {std::to_string(number)}); !done) return failure(done.error());
    if (auto done = store.run("INSERT OR REPLACE INTO meta VALUES('forgetting', '1')"); !done) return failure(done.error());
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    if (auto done = finish_forgetting(store); !done) return failure(done.error());
    return forgotten;
}

Result<void> finish_forgetting(Store& store) {
    const auto begun = count_of(store, "SELECT count(*) FROM meta WHERE key = 'forgetting'", {});
    if (!begun) return failure(begun.error());
    if (*begun == 0) return {};
    // Copies hold the name as well; the file itself is written anew without the pages that held it.
    if (auto done = drop_backups(store); !done) return done;
    for (const std::string_view sql : {"VACUUM", "PRAGMA wal_checkpoint(TRUNCATE)"})
        if (auto done = store.text(sql); !done) return failure(done.error());
    return store.run("DELETE FROM meta WHERE key = 'forgetting'");
}

Result<bool> is_known(Store& store, std::int64_t number) {
    const auto known = count_of(store, "SELECT (SELECT count(*) FROM person WHERE number = ?1) + (SELECT count(*) FROM event WHERE person = ?1)", {number});
    if (!known) return failure(known.error());
    return *known > 0;
}

} // namespace spurwright::records
