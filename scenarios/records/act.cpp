#include "scenarios/records/act.h"

#include "scenarios/records/schema.h"

namespace spurwright::records {
namespace {

struct NotedChange {
    std::string table, before, after; // empty: there was, there is no row
};

std::string json_column(std::string_view column) { return "json_extract(?1, '$." + std::string(column) + "')"; }

std::string where_keys(const NotedTable& table) {
    std::string text = " WHERE ";
    for (std::size_t i = 0; i < table.keys; ++i)
        text += (i ? " AND " : "") + std::string(table.columns[i]) + " = " + json_column(table.columns[i]);
    return text;
}

std::string sql_back(const NotedTable& table, bool was, bool is) {
    if (!was) return "DELETE FROM " + std::string(table.name) + where_keys(table);
    std::string columns, values, sets;
    for (const std::string_view column : table.columns) {
        const std::string comma = columns.empty() ? "" : ", ";
        columns += comma + std::string(column);
        values += comma + json_column(column);
        sets += comma + std::string(column) + " = " + json_column(column);
    }
    if (!is) return "INSERT INTO " + std::string(table.name) + "(" + columns + ") VALUES(" + values + ")";
    return "UPDATE " + std::string(table.name) + " SET " + sets + where_keys(table);
}

Result<void> put_back(Store& store, const NotedChange& change) {
    for (const NotedTable& table : noted_tables())
        if (table.name == change.table) {
            const bool was = !change.before.empty(), is = !change.after.empty();
            return store.run(sql_back(table, was, is), {was ? change.before : change.after});
        }
    return {};
}

} // namespace

Rollback::~Rollback() {
    // Fails where SQLite rolled back by itself, as on a full disk: then nothing is open.
    if (open_) [[maybe_unused]] const auto done = store_.run("ROLLBACK");
}

Result<std::unique_ptr<Act>> Act::begin(Store& store, std::string_view what, const std::string& when_utc) {
    if (auto begun = store.run("BEGIN IMMEDIATE"); !begun) return failure(begun.error());
    std::unique_ptr<Act> act(new Act(store));
    if (auto done = store.run("INSERT INTO act(when_utc, what) VALUES(?1, ?2)", {when_utc, std::string(what)}); !done) return failure(done.error());
    act->number_ = store.last_number();
    if (auto done = store.run("INSERT OR REPLACE INTO open_act VALUES(1, ?1)", {act->number_}); !done) return failure(done.error());
    return act;
}

Result<void> Act::commit() {
    if (auto done = store_.run("DELETE FROM open_act"); !done) return done;
    auto done = store_.run("COMMIT");
    if (done) rollback_.committed();
    return done;
}

Result<std::optional<DoneAct>> last_act(Store& store, std::string_view kind) {
    std::optional<DoneAct> found;
    auto done = store.each("SELECT id, when_utc, what, (SELECT count(*) FROM change WHERE change.act = a.id) FROM act a WHERE what LIKE ?1 || '%' AND undoes IS NULL AND id NOT "
                           "IN (SELECT undoes FROM act WHERE undoes IS NOT NULL) ORDER BY id DESC LIMIT 1",
                           {std::string(kind)}, 4, [&](const Row& row) { found = DoneAct{row.whole(0), row.text(1), row.text(2), row.whole(3)}; });
    if (!done) return failure(done.error());
    return found;
}

Result<void> undo(Store& store, const DoneAct& act, const std::string& when_utc) {
    const auto undoing = Act::begin(store, act.what, when_utc);
    if (!undoing) return failure(undoing.error());
    if (auto done = store.run("UPDATE act SET undoes = ?1 WHERE id = ?2", {act.number, (*undoing)->number()}); !done) return done;
    std::vector<NotedChange> changes;
    auto read = store.each("SELECT tab, before, after FROM change WHERE act = ?1 ORDER BY id DESC", {act.number}, 3,
                           [&](const Row& row) { changes.push_back({row.text(0), row.text(1), row.text(2)}); });
    if (!read) return read;
    for (const NotedChange& change : changes)
        if (auto done = put_back(store, change); !done) return done;
    return (*undoing)->commit();
}

} // namespace spurwright::records
