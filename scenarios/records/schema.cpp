#include "scenarios/records/schema.h"

#include "scenarios/records/act.h"

namespace spurwright::records {
namespace {

// Masses in milligrams, lengths in micrometres, places on the map in ten-millionths of a degree, days as 2026-01-31.
// Whole numbers throughout: they come back as they were written. `event` and `kept_vine` are only added to.
constexpr std::array<std::string_view, 10> tables{
    "CREATE TABLE meta(key TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL)",
    "CREATE TABLE act(id INTEGER PRIMARY KEY AUTOINCREMENT, when_utc TEXT NOT NULL, what TEXT NOT NULL, undoes INTEGER UNIQUE REFERENCES act(id))",
    "CREATE TABLE open_act(one INTEGER PRIMARY KEY CHECK(one = 1), act INTEGER NOT NULL REFERENCES act(id))",
    "CREATE TABLE change(id INTEGER PRIMARY KEY AUTOINCREMENT, act INTEGER REFERENCES act(id), tab TEXT NOT NULL, row_key TEXT NOT NULL, before TEXT, after TEXT)",
    "CREATE TABLE person(number INTEGER PRIMARY KEY NOT NULL CHECK(number > 0), name TEXT NOT NULL, language TEXT NOT NULL, crew TEXT NOT NULL, start TEXT)",
    "CREATE TABLE event(id INTEGER PRIMARY KEY AUTOINCREMENT, kind TEXT NOT NULL, version INTEGER NOT NULL, when_utc TEXT NOT NULL, person INTEGER, body TEXT NOT NULL "
    "CHECK(json_valid(body)), corrects INTEGER REFERENCES event(id))",
    "CREATE TABLE kept_vine(hash TEXT PRIMARY KEY NOT NULL, code TEXT, file BLOB NOT NULL)",
    "CREATE TABLE rule_set(hash TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, judge_version INTEGER NOT NULL, lines TEXT NOT NULL)",
    "CREATE TABLE block(id INTEGER PRIMARY KEY NOT NULL, name TEXT NOT NULL UNIQUE, spacing_um INTEGER NOT NULL CHECK(spacing_um > 0), rows_um INTEGER, formula TEXT, "
    "invented INTEGER NOT NULL DEFAULT 0)",
    "CREATE TABLE reference_vine(id INTEGER PRIMARY KEY NOT NULL, block INTEGER NOT NULL REFERENCES block(id), tag TEXT NOT NULL, vine_row TEXT NOT NULL, place INTEGER, "
    "latitude_e7 INTEGER, longitude_e7 INTEGER, UNIQUE(block, tag))"};
constexpr std::array<std::string_view, 4> more_tables{
    "CREATE TABLE weighing(vine INTEGER NOT NULL REFERENCES reference_vine(id), winter INTEGER NOT NULL, mass_mg INTEGER NOT NULL CHECK(mass_mg > 0), typed TEXT NOT NULL, "
    "day TEXT, canes INTEGER, buds INTEGER, crop_mg INTEGER, crop_typed TEXT, note TEXT NOT NULL, PRIMARY KEY(vine, winter)) WITHOUT ROWID",
    "CREATE INDEX change_of_act ON change(act)", "CREATE INDEX change_of_row ON change(tab, row_key)", "CREATE INDEX event_of_person ON event(person)"};

// The columns of a row as one JSON object: json_object('id', NEW.id, ...).
std::string row_object(const NotedTable& table, std::string_view which) {
    std::string text = "json_object(";
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        text += (i ? ", '" : "'") + std::string(table.columns[i]) + "', " + std::string(which) + "." + std::string(table.columns[i]);
    return text + ")";
}

std::string row_key(const NotedTable& table, std::string_view which) {
    std::string text;
    for (std::size_t i = 0; i < table.keys; ++i)
        text += (i ? " || ' ' || " : "") + std::string(which) + "." + std::string(table.columns[i]);
    return text;
}

std::string noting_trigger(const NotedTable& table, std::string_view event) {
    const bool before = event != "INSERT", after = event != "DELETE";
    return "CREATE TRIGGER " + std::string(table.name) + "_" + std::string(event) + " AFTER " + std::string(event) + " ON " + std::string(table.name) +
           " BEGIN INSERT INTO change(act, tab, row_key, before, after) VALUES((SELECT act FROM open_act), '" + std::string(table.name) + "', " +
           row_key(table, after ? "NEW" : "OLD") + ", " + (before ? row_object(table, "OLD") : "NULL") + ", " + (after ? row_object(table, "NEW") : "NULL") + "); END";
}

Result<void> make_tables(Store& store) {
    const auto all = [&](const auto& statements) -> Result<void> {
        for (const std::string_view sql : statements)
            if (auto done = store.run(sql); !done) return done;
        return {};
    };
    if (auto done = all(tables); !done) return done;
    if (auto done = all(more_tables); !done) return done;
    for (const NotedTable& table : noted_tables())
        for (const std::string_view event : {"INSERT", "UPDATE", "DELETE"})
            if (auto done = store.run(noting_trigger(table, event)); !done) return done;
    return store.run("INSERT INTO meta VALUES('schema', ?1)", {std::to_string(store_version)});
}

} // namespace

const std::vector<NotedTable>& noted_tables() {
    static const std::vector<NotedTable> tables_noted{
        {"person", 1, {"number", "name", "language", "crew", "start"}},
        {"block", 1, {"id", "name", "spacing_um", "rows_um", "formula", "invented"}},
        {"reference_vine", 1, {"id", "block", "tag", "vine_row", "place", "latitude_e7", "longitude_e7"}},
        {"weighing", 2, {"vine", "winter", "mass_mg", "typed", "day", "canes", "buds", "crop_mg", "crop_typed", "note"}}};
    return tables_noted;
}

Result<void> check_version(Store& store) {
    const auto meta = store.whole("SELECT count(*) FROM sqlite_master WHERE name = 'meta'");
    if (!meta) return failure(meta.error());
    const Error other{Fault::bad_file, TextKey{"error.store.other-file"}, {}, {store.path(), 0, 0, 0}};
    if (*meta != 1) return failure(other);
    const auto version = store.whole("SELECT value FROM meta WHERE key = 'schema'");
    if (!version) return failure(version.error());
    if (!*version || **version < 1) return failure(other);
    if (**version > store_version)
        return failure({Fault::newer, TextKey{"error.store.newer"}, {{"found", Count{**version}}, {"newest", Count{store_version}}}, {store.path(), 0, 0, 0}});
    return {};
}

Result<void> bring_up_to_date(Store& store) {
    const auto empty = [&] { return store.whole("SELECT count(*) FROM sqlite_master"); };
    auto tables_there = empty();
    if (!tables_there) return failure(tables_there.error());
    if (*tables_there != 0) return check_version(store); // version 1 is the first: nothing is older
    if (auto begun = store.run("BEGIN IMMEDIATE"); !begun) return begun;
    Rollback undone(store);
    tables_there = empty(); // another program may have been quicker
    if (!tables_there) return failure(tables_there.error());
    if (*tables_there == 0)
        if (auto made = make_tables(store); !made) return made;
    if (auto kept = store.run("COMMIT"); !kept) return kept;
    undone.committed();
    return check_version(store);
}

} // namespace spurwright::records
