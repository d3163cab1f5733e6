#include "scenarios/records/store.h"

#include <soci/soci.h>
#include <soci/sqlite3/soci-sqlite3.h>

#include <charconv>
#include <deque>
#include <map>

#include "scenarios/io/safe_file.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/schema.h"
#include "scenarios/settings/folders.h"

namespace spurwright::records {

// Named: Store::Inside holds them, and a type with an outside name may hold none of an unnamed namespace.
namespace store_parts {

// One value on its way in; its address stays while its statement lives.
struct Bound {
    std::size_t kind = 0;
    long long whole = 0;
    std::string text;
    std::unique_ptr<soci::blob> bytes;
    soci::indicator given = soci::i_ok;
};

inline void fill(Bound& bound, const Value& value) {
    bound.given = std::holds_alternative<std::monostate>(value) ? soci::i_null : soci::i_ok;
    if (const auto* whole = std::get_if<std::int64_t>(&value)) bound.whole = *whole;
    else if (const auto* text = std::get_if<std::string>(&value)) bound.text = *text;
    else if (const auto* bytes = std::get_if<Bytes>(&value)) {
        bound.bytes->trim(0);
        if (!bytes->bytes.empty()) bound.bytes->write(0, bytes->bytes.data(), bytes->bytes.size());
    }
}

// A statement that was read once and can be run again with other values of the same kinds.
struct Prepared {
    Prepared(soci::session& session, const std::string& sql, const Values& values) : statement(session) {
        statement.alloc();
        statement.prepare(sql);
        for (const Value& value : values) {
            Bound& one = bound.emplace_back();
            one.kind = value.index();
            if (std::holds_alternative<std::int64_t>(value)) statement.exchange(soci::use(one.whole, one.given));
            else if (std::holds_alternative<Bytes>(value)) {
                one.bytes = std::make_unique<soci::blob>(session);
                statement.exchange(soci::use(*one.bytes, one.given));
            } else
                statement.exchange(soci::use(one.text, one.given));
        }
    }
    bool takes(const Values& values) const {
        if (values.size() != bound.size()) return false;
        for (std::size_t i = 0; i < values.size(); ++i)
            if (values[i].index() != bound[i].kind && !std::holds_alternative<std::monostate>(values[i])) return false;
        return true;
    }
    void give(const Values& values) {
        for (std::size_t i = 0; i < values.size(); ++i) fill(bound[i], values[i]);
    }

    soci::statement statement;
    std::deque<Bound> bound;
};

} // namespace store_parts

namespace {

using store_parts::Prepared;

namespace sq = ::sqlite_api;

// Bytes that are read whole at every opening to see that they are sound; a larger store is checked once a day, before its
// copy. What is damaged where it is read is refused in any case. Our choice: 8 MiB take a hundredth of a second or two.
constexpr std::int64_t checked_when_opened = 8 << 20;

constexpr int wait_ms = 20, longest_wait_ms = 5'000;

// A path as SQLite reads it in a "file:" name, so that blanks, quotation marks and accents in it mean nothing.
std::string file_name(const std::string& path, std::string_view mode) {
    constexpr std::string_view digits = "0123456789ABCDEF";
    std::string name = "file:";
    for (const char c : path) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '/' || c == '.' || c == '-' || c == '_';
        if (plain) {
            name.push_back(c);
            continue;
        }
        const auto byte = static_cast<unsigned char>(c);
        name += '%';
        name += digits[byte >> 4];
        name += digits[byte & 15];
    }
    return name + "?" + std::string(mode);
}

Error store_error(Fault fault, std::string_view key, const std::string& path, Arguments arguments = {}) {
    return {fault, TextKey{key}, std::move(arguments), {path, 0, 0, 0}};
}

// The reason alone: what follows it is the statement, with a person's values in it.
std::string reason_of(const std::string& text) {
    const auto begun = text.find(": ");
    const std::string reason = begun == std::string::npos ? text : text.substr(begun + 2);
    return reason.substr(0, reason.find(" while "));
}

// What SQLite's own number for a failure means to a person.
Error why_not(int code, const std::string& text, const std::string& path) {
    switch (code & 0xff) {
    case SQLITE_FULL: return store_error(Fault::cannot_write, "error.file.full", path);
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN: return store_error(Fault::cannot_write, "error.file.not-allowed", path);
    case SQLITE_BUSY:
    case SQLITE_LOCKED: return store_error(Fault::cannot_write, "error.store.busy", path);
    case SQLITE_CORRUPT: return store_error(Fault::bad_file, "error.store.damaged", path);
    case SQLITE_NOTADB: return store_error(Fault::bad_file, "error.store.other-file", path);
    case SQLITE_IOERR: return store_error(Fault::cannot_write, "error.store.no-write", path, {{"code", Count{code}}});
    default: return store_error(Fault::bad_file, "error.store.failed", path, {{"text", reason_of(text)}});
    }
}

// SQLite's number of what went wrong, as the library hands it on.
int code_of(const soci::soci_error& error) {
    const auto* own = dynamic_cast<const soci::sqlite3_soci_error*>(&error);
    return own ? own->result() : SQLITE_ERROR;
}

sq::sqlite3* raw_of(soci::session& session) { return static_cast<soci::sqlite3_session_backend*>(session.get_backend())->conn_; }

std::unique_ptr<soci::session> opened_session(const std::string& path, std::string_view mode) {
    return std::make_unique<soci::session>(soci::sqlite3, "dbname=" + file_name(path, mode) + " timeout=5");
}

// To read alone, also from a folder that may not be written.
std::unique_ptr<soci::session> session_to_read(const std::string& path) {
    for (const std::string_view mode : {"mode=rw", "mode=ro"}) try {
            auto session = opened_session(path, mode);
            *session << "SELECT count(*) FROM sqlite_master"; // opened only when it is first read
            return session;
        } catch (const soci::soci_error&) {
            continue;
        }
    return opened_session(path, "immutable=1");
}

// Every page of `from` over those of `to`, in one transaction; SQLite's own number of what came of it.
int copied_pages(sq::sqlite3* to, sq::sqlite3* from) {
    sq::sqlite3_backup* copying = sq::sqlite3_backup_init(to, "main", from, "main");
    if (!copying) return sq::sqlite3_errcode(to);
    int code = SQLITE_BUSY;
    for (int waited = 0; waited <= longest_wait_ms; waited += wait_ms) {
        code = sq::sqlite3_backup_step(copying, -1); // in one piece: nobody sees half of it
        if ((code & 0xff) != SQLITE_BUSY && (code & 0xff) != SQLITE_LOCKED) break;
        sq::sqlite3_sleep(wait_ms);
    }
    (void)sq::sqlite3_backup_finish(copying);
    return code;
}

// What an answer is read into, row by row.
class ReadRow : public Row {
public:
    explicit ReadRow(std::size_t columns) : texts_(columns), given_(columns) {}
    void into(soci::statement& statement) {
        for (std::size_t i = 0; i < texts_.size(); ++i) statement.exchange(soci::into(texts_[i], given_[i]));
    }
    bool null(std::size_t column) const override { return given_.at(column) == soci::i_null; }
    const std::string& text(std::size_t column) const override {
        static const std::string nothing;
        return null(column) ? nothing : texts_.at(column);
    }

private:
    std::vector<std::string> texts_;
    std::vector<soci::indicator> given_;
};

} // namespace

// Not in the header: inlined there, g++ 12 guesses wrong about what is set.
Value value_of(const std::optional<std::int64_t>& value) {
    if (!value) return {};
    return *value;
}
Value value_of(const std::optional<std::string>& value) {
    if (!value) return {};
    return *value;
}
Value text_or_null(const std::string& text) {
    if (text.empty()) return {};
    return text;
}

std::int64_t Row::whole(std::size_t column) const {
    std::int64_t value = 0;
    const std::string& digits = text(column);
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

std::optional<std::int64_t> Row::maybe_whole(std::size_t column) const {
    return null(column) ? std::nullopt : std::optional(whole(column));
}

struct Store::Inside {
    std::string path;
    std::unique_ptr<soci::session> session;
    std::map<std::string, std::unique_ptr<store_parts::Prepared>, std::less<>> kept; // after the session, so that they go first

    sq::sqlite3* raw() const { return raw_of(*session); }

    // Runs what may fail; the failure in a person's words.
    template <class Act>
    Result<void> tried(Act act) {
        try {
            act();
            return {};
        } catch (const soci::soci_error& error) {
            return failure(why_not(code_of(error), error.what(), path));
        }
    }
};

Store::Store(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

const std::string& Store::path() const { return inside_->path; }

Result<Store> Store::open_as(const std::string& path, std::string_view mode) {
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    try {
        inside->session = opened_session(path, mode);
    } catch (const soci::soci_error& error) {
        return failure(why_not(code_of(error), error.what(), path));
    }
    Store store(std::move(inside));
    // What is forgotten is written over; a key that names another row must find it.
    for (const std::string_view pragma : {"PRAGMA foreign_keys=ON", "PRAGMA secure_delete=ON"})
        if (auto done = store.text(pragma); !done) return failure(done.error());
    const auto size = store.whole("SELECT page_count * page_size FROM pragma_page_count(), pragma_page_size()");
    if (!size) return failure(size.error());
    if (size->value_or(0) <= checked_when_opened)
        if (auto sound = store.check(); !sound) return failure(sound.error());
    return store;
}

Result<void> Store::check() {
    const auto sound = text("PRAGMA quick_check(1)");
    if (!sound) return failure(sound.error());
    if (*sound != "ok") return failure(store_error(Fault::bad_file, "error.store.damaged", path()));
    return {};
}

Result<Store> Store::open(const std::string& path) {
    if (path.empty()) return failure(store_error(Fault::cannot_write, "error.store.no-home", path));
    if (auto made = settings::make_folder(settings::folder_of(path)); !made) return failure(made.error());
    auto store = open_as(path, "mode=rwc");
    if (!store) return store;
    // An answer that was acknowledged is on the disk.
    for (const std::string_view pragma : {"PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL"})
        if (auto done = store->text(pragma); !done) return failure(done.error());
    if (auto done = bring_up_to_date(*store); !done) return failure(done.error());
    return store;
}

Result<std::optional<Store>> Store::open_to_read(const std::string& path) {
    if (path.empty() || !io::is_there(path)) return std::optional<Store>();
    // A folder that may not be written holds no place for the lists WAL keeps: then the file alone is read, if it is whole.
    Result<Store> store = open_as(path, "mode=rw");
    if (!store && store.error().fault == Fault::cannot_write) store = open_as(path, "mode=ro");
    if (!store && store.error().fault == Fault::cannot_write && !io::is_there(path + "-wal")) store = open_as(path, "immutable=1");
    if (!store) return failure(store.error());
    if (auto known = check_version(*store); !known) return failure(known.error());
    return std::optional<Store>(std::move(*store));
}

Result<void> Store::run(std::string_view sql, const Values& values) {
    return inside_->tried([&] {
        auto at = inside_->kept.find(sql);
        if (at == inside_->kept.end() || !at->second->takes(values)) {
            if (at != inside_->kept.end()) inside_->kept.erase(at);
            auto made = std::make_unique<Prepared>(*inside_->session, std::string(sql), values);
            made->statement.define_and_bind();
            at = inside_->kept.emplace(std::string(sql), std::move(made)).first;
        }
        at->second->give(values);
        try {
            at->second->statement.execute(true);
        } catch (...) {
            inside_->kept.erase(at);
            throw;
        }
    });
}

Result<void> Store::each(std::string_view sql, const Values& values, std::size_t columns, const std::function<void(const Row&)>& row) {
    return inside_->tried([&] {
        Prepared prepared(*inside_->session, std::string(sql), values);
        ReadRow read(columns);
        read.into(prepared.statement);
        prepared.statement.define_and_bind();
        prepared.give(values);
        prepared.statement.execute();
        while (prepared.statement.fetch()) row(read);
    });
}

Result<std::optional<std::string>> Store::text(std::string_view sql, const Values& values) {
    std::optional<std::string> first;
    bool any = false;
    auto done = each(sql, values, 1, [&](const Row& row) {
        if (!any && !row.null(0)) first = row.text(0);
        any = true;
    });
    if (!done) return failure(done.error());
    return first;
}

Result<std::optional<std::int64_t>> Store::whole(std::string_view sql, const Values& values) {
    std::optional<std::int64_t> first;
    bool any = false;
    auto done = each(sql, values, 1, [&](const Row& row) {
        if (!any) first = row.maybe_whole(0);
        any = true;
    });
    if (!done) return failure(done.error());
    return first;
}

// By a connection of its own: a statement of the store's that is kept for the next time would hold what is written over.
Result<void> become(Store& store, const std::string& from) {
    try {
        const auto to = opened_session(store.path(), "mode=rw"), other = session_to_read(from);
        *to << "PRAGMA synchronous=FULL";
        *to << "PRAGMA secure_delete=ON";
        if (const int code = copied_pages(raw_of(*to), raw_of(*other)); code != SQLITE_DONE) return failure(why_not(code, "", store.path()));
        return {};
    } catch (const soci::soci_error& error) {
        return failure(why_not(code_of(error), error.what(), store.path()));
    }
}

std::int64_t Store::last_number() const { return sq::sqlite3_last_insert_rowid(inside_->raw()); }

} // namespace spurwright::records
