#include "scenarios/records/events.h"

#include <zlib.h>

namespace spurwright::records {
namespace {

constexpr std::size_t largest_kept_vine = 64u << 20; // as large as a vine file may be; our choice

std::string packed(const std::string& text) {
    uLongf size = ::compressBound(static_cast<uLong>(text.size()));
    std::string bytes(size, '\0');
    ::compress2(reinterpret_cast<Bytef*>(bytes.data()), &size, reinterpret_cast<const Bytef*>(text.data()), static_cast<uLong>(text.size()), Z_BEST_COMPRESSION);
    bytes.resize(size);
    return std::to_string(text.size()) + "\n" + bytes; // the length first, so that it is unpacked at once
}

std::optional<std::string> unpacked(const std::string& bytes) {
    const auto end = bytes.find('\n');
    if (end > 9) return std::nullopt; // none, or longer than any length
    std::size_t length = 0;
    for (const char c : bytes.substr(0, end)) {
        if (c < '0' || c > '9') return std::nullopt;
        length = 10 * length + static_cast<std::size_t>(c - '0');
    }
    if (length > largest_kept_vine) return std::nullopt;
    std::string text(length, '\0');
    auto size = static_cast<uLongf>(length);
    const int done = ::uncompress(reinterpret_cast<Bytef*>(text.data()), &size, reinterpret_cast<const Bytef*>(bytes.data() + end + 1), static_cast<uLong>(bytes.size() - end - 1));
    if (done != Z_OK || size != length) return std::nullopt;
    return text;
}

Event event_in(const Row& row) { return {row.whole(0), row.text(1), static_cast<int>(row.whole(2)), row.text(3), row.maybe_whole(4), row.text(5), row.maybe_whole(6)}; }

} // namespace

Result<std::int64_t> add_event(Store& store, const Event& event) {
    auto done = store.run("INSERT INTO event(kind, version, when_utc, person, body, corrects) VALUES(?1, ?2, ?3, ?4, ?5, ?6)",
                          {event.kind, std::int64_t{event.version}, event.when_utc, value_of(event.person), event.body, value_of(event.corrects)});
    if (!done) return failure(done.error());
    return store.last_number();
}

Result<void> each_event(Store& store, std::string_view kind, std::int64_t after, const std::function<void(const Event&)>& event) {
    return store.each("SELECT id, kind, version, when_utc, person, body, corrects FROM event WHERE id > ?1 AND (?2 = '' OR kind = ?2) ORDER BY id", {after, std::string(kind)}, 7,
                      [&](const Row& row) { event(event_in(row)); });
}

Result<void> each_event_of(Store& store, std::int64_t person, const std::function<void(const Event&)>& event) {
    return store.each("SELECT id, kind, version, when_utc, person, body, corrects FROM event WHERE person = ?1 ORDER BY id", {person}, 7, [&](const Row& row) { event(event_in(row)); });
}

Result<void> keep_vine(Store& store, const std::string& hash, const KeptVine& vine) {
    return store.run("INSERT OR IGNORE INTO kept_vine VALUES(?1, ?2, ?3)", {hash, value_of(vine.code), Bytes{packed(vine.file)}});
}

Result<std::optional<KeptVine>> kept_vine(Store& store, const std::string& hash) {
    std::optional<std::string> bytes, code;
    auto read = store.each("SELECT code, file FROM kept_vine WHERE hash = ?1", {hash}, 2, [&](const Row& row) {
        if (!row.null(0)) code = row.text(0);
        bytes = row.text(1);
    });
    if (!read) return failure(read.error());
    if (!bytes) return std::optional<KeptVine>();
    auto text = unpacked(*bytes);
    if (!text) return failure({Fault::bad_file, TextKey{"error.store.damaged"}, {}, {store.path(), 0, 0, 0}});
    return std::optional(KeptVine{code, std::move(*text)});
}

Result<void> keep_rule_set(Store& store, const std::string& hash, const KeptRuleSet& rules) {
    return store.run("INSERT OR IGNORE INTO rule_set VALUES(?1, ?2, ?3, ?4)", {hash, rules.name, std::int64_t{rules.judge_version}, rules.lines});
}

Result<std::optional<KeptRuleSet>> kept_rule_set(Store& store, const std::string& hash) {
    std::optional<KeptRuleSet> found;
    auto read = store.each("SELECT name, judge_version, lines FROM rule_set WHERE hash = ?1", {hash}, 3,
                           [&](const Row& row) { found = KeptRuleSet{row.text(0), static_cast<int>(row.whole(1)), row.text(2)}; });
    if (!read) return failure(read.error());
    return found;
}

} // namespace spurwright::records
