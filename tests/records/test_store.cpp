// The store: what is put in comes out, acts are whole or nothing, each is noted and can be undone, and what cannot be
// opened says why and is left as it was.
#include <doctest/doctest.h>

#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>

#include "scenarios/records/act.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/events.h"
#include "scenarios/records/people.h"
#include "scenarios/records/schema.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::records;
using test::Folder;

namespace {

constexpr const char* noon = "2026-01-31T12:00:00Z";

template <class T>
std::string fault_of(const Result<T>& result) {
    if (result) return "";
    return std::string(result.error().key.name);
}

Person somebody(std::int64_t number) { return {number, "Ana Ñ", "es", "north", "2026-01-05"}; }

void put(Store& store, const Person& person, const char* what = "crew-import") {
    const auto act = Act::begin(store, what, noon);
    REQUIRE(act);
    REQUIRE(put_person(store, person));
    REQUIRE((*act)->commit());
}

} // namespace

TEST_SUITE("records/store") {
    TEST_CASE("texts, whole numbers of 64 bits, bytes and nothing come back as they were put in") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE_MESSAGE(store, fault_of(store));
        REQUIRE(store->run("CREATE TABLE t(a INTEGER, b TEXT, c BLOB)"));
        const std::string bytes("\0\x01\xff'\"", 5), text = "ñ 'quoted' \"too\"; DROP TABLE t; -- \n";
        const std::int64_t large = 9'007'199'254'740'993; // no double holds it
        CHECK(fault_of(store->run("INSERT INTO t VALUES(?1, ?2, ?3)", {large, text, Bytes{bytes}})) == "");
        REQUIRE(store->run("INSERT INTO t VALUES(?1, ?2, ?3)", {Value(), Value(), Value()}));
        REQUIRE(store->run("INSERT INTO t VALUES(?1, ?2, ?3)", {-large, std::string(), Bytes{std::string(100'000, 'x')}}));
        int rows = 0;
        REQUIRE(store->each("SELECT a, b, c FROM t ORDER BY rowid", {}, 3, [&](const Row& row) {
            if (rows == 0) {
                CHECK(row.whole(0) == large);
                CHECK(row.text(1) == text);
                CHECK(row.text(2) == bytes);
            } else if (rows == 1) {
                for (std::size_t i = 0; i < 3; ++i) CHECK(row.null(i));
                CHECK(!row.maybe_whole(0));
            } else {
                CHECK(row.whole(0) == -large);
                CHECK(!row.null(1));
                CHECK(row.text(2).size() == 100'000);
            }
            ++rows;
        }));
        CHECK(rows == 3);
        CHECK(fault_of(store->run("INSERT INTO nowhere VALUES(1)")) == "error.store.failed");
        CHECK(*store->whole("SELECT count(*) FROM t") == 3);
    }
    TEST_CASE("training: WAL, synchronous FULL, foreign keys, what is deleted is written over") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(store);
        CHECK(*store->text("PRAGMA journal_mode") == "wal");
        CHECK(*store->text("PRAGMA synchronous") == "2");
        CHECK(*store->text("PRAGMA foreign_keys") == "1");
        CHECK(*store->text("PRAGMA secure_delete") == "1");
        CHECK(fault_of(store->run("INSERT INTO reference_vine VALUES(1, 99, 'a', '1', 1, NULL, NULL)")) == "error.store.failed");
    }
    TEST_CASE("an act that is not committed leaves nothing; a committed one is noted with every row before and after") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(store);
        {
            const auto act = Act::begin(*store, "crew-import", noon);
            REQUIRE(act);
            REQUIRE(put_person(*store, somebody(7)));
        }
        CHECK(people_of(*store)->empty());
        CHECK(*store->whole("SELECT count(*) FROM act") == 0);
        put(*store, somebody(7));
        Person other = somebody(7);
        other.crew = "south";
        put(*store, other);
        CHECK(*store->whole("SELECT count(*) FROM change WHERE tab = 'person' AND row_key = '7'") == 2);
        CHECK(*store->text("SELECT json_extract(before, '$.crew') FROM change ORDER BY id DESC") == "north");
        CHECK(*store->text("SELECT json_extract(after, '$.crew') FROM change ORDER BY id DESC") == "south");
    }
    TEST_CASE("undo puts back what was changed, taken out and put in, act by act, and is an act itself") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(store);
        put(*store, somebody(7));
        Person other = somebody(7);
        other.name = "Eva";
        other.start.clear();
        put(*store, other);
        const auto act = Act::begin(*store, "crew-import", noon);
        REQUIRE(store->run("DELETE FROM person"));
        REQUIRE((*act)->commit());
        const std::vector<std::vector<Person>> before{{other}, {somebody(7)}, {}};
        for (const auto& wanted : before) {
            const auto last = last_act(*store, "crew-");
            REQUIRE((last && *last));
            CHECK((*last)->changes == 1);
            REQUIRE(undo(*store, **last, noon));
            CHECK(*people_of(*store) == wanted);
        }
        CHECK(!*last_act(*store, "crew-"));
        CHECK(*store->whole("SELECT count(*) FROM act") == 6);
        CHECK(*store->whole("SELECT count(*) FROM act WHERE undoes IS NOT NULL") == 3);
    }
    TEST_CASE("a path with blanks, accents, signs and 200 characters") {
        const Folder folder;
        const std::string name = folder.file("viña nº 1 = 100 % 'x' \"y\"#?&;/" + std::string(150, 'n'));
        {
            auto store = Store::open(name + "/store.sqlite");
            REQUIRE_MESSAGE(store, fault_of(store));
            put(*store, somebody(1));
        }
        CHECK(std::filesystem::exists(name + "/store.sqlite"));
        auto read = Store::open_to_read(name + "/store.sqlite");
        REQUIRE((read && *read));
        CHECK(people_of(**read)->size() == 1);
    }
    TEST_CASE("reading makes no file; another file, a cut one and a newer store are refused and left as they were") {
        const Folder folder;
        CHECK(!*Store::open_to_read(folder.file("none.sqlite")));
        CHECK(folder.files() == 0);
        CHECK(fault_of(Store::open("")) == "error.store.no-home");

        const std::string text = folder.write("text.sqlite", "these are no records\n" + std::string(4000, 'x'));
        CHECK(fault_of(Store::open(text)) == "error.store.other-file");
        CHECK(fault_of(Store::open_to_read(text)) == "error.store.other-file");
        CHECK(test::file_text(text).starts_with("these are no records\n"));

        const std::string newer = folder.file("newer.sqlite");
        {
            auto store = Store::open(newer);
            REQUIRE(store->run("UPDATE meta SET value = '2' WHERE key = 'schema'"));
        }
        const std::string before = test::file_text(newer);
        CHECK(fault_of(Store::open(newer)) == "error.store.newer");
        CHECK(fault_of(Store::open_to_read(newer)) == "error.store.newer");
        CHECK(test::file_text(newer) == before);

        const std::string cut = folder.file("cut.sqlite");
        {
            auto store = Store::open(cut);
            for (int i = 1; i <= 500; ++i) put(*store, somebody(i));
            REQUIRE(store->text("PRAGMA wal_checkpoint(TRUNCATE)"));
        }
        const std::string whole = test::file_text(cut);
        for (const std::size_t share : {1u, 2u, 3u}) {
            const std::string torn = folder.write("torn.sqlite", whole.substr(0, whole.size() * share / 4));
            CAPTURE(share);
            CHECK(fault_of(Store::open(torn)) == "error.store.damaged");
            CHECK(test::file_text(torn).size() == whole.size() * share / 4);
        }
    }
    TEST_CASE("a folder that may only be read: what is there is read, writing is refused in a sentence") {
        const Folder folder;
        const std::string inner = folder.file("inner");
        {
            auto store = Store::open(inner + "/s.sqlite");
            put(*store, somebody(3));
        }
        REQUIRE(::chmod((inner + "/s.sqlite").c_str(), 0444) == 0);
        REQUIRE(::chmod(inner.c_str(), 0555) == 0);
        const bool superuser = ::geteuid() == 0; // whom nothing stops: then as nobody
        REQUIRE(::chmod(folder.path().c_str(), 0755) == 0);
        REQUIRE((!superuser || ::seteuid(65534) == 0));
        CHECK(fault_of(Store::open(inner + "/s.sqlite")) == "error.file.not-allowed");
        {
            auto read = Store::open_to_read(inner + "/s.sqlite");
            CHECK(fault_of(read) == "");
            CHECK((read && *read && people_of(**read)->size() == 1));
        }
        REQUIRE((!superuser || ::seteuid(0) == 0));
        REQUIRE(::chmod(inner.c_str(), 0755) == 0);
        CHECK(!Store::open("/proc/nowhere/s.sqlite"));
    }
    TEST_CASE("two at once: the second waits for the first, and reads what was committed before") {
        const Folder folder;
        auto one = Store::open(folder.file("s.sqlite"));
        auto two = Store::open(folder.file("s.sqlite"));
        REQUIRE((one && two));
        REQUIRE(two->text("PRAGMA busy_timeout=50"));
        {
            const auto act = Act::begin(*one, "crew-import", noon);
            REQUIRE(put_person(*one, somebody(1)));
            CHECK(fault_of(Act::begin(*two, "crew-import", noon)) == "error.store.busy");
            CHECK(people_of(*two)->empty());
            REQUIRE((*act)->commit());
        }
        CHECK(people_of(*two)->size() == 1);
        put(*two, somebody(2));
        CHECK(people_of(*one)->size() == 2);
    }
    TEST_CASE("events: only added, in the order of their numbers whatever the clock says; what an answer needs is kept once") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(store);
        const auto first = add_event(*store, {0, "answer", 1, "2026-02-02T08:00:00Z", 7, R"({"plan":"x"})", std::nullopt});
        const auto second = add_event(*store, {0, "answer", 1, "2026-02-01T08:00:00Z", std::nullopt, "{}", *first}); // a day back
        REQUIRE((first && second));
        CHECK(*second > *first);
        CHECK(fault_of(add_event(*store, {0, "answer", 1, noon, 7, "{no json", std::nullopt})) == "error.store.failed");
        std::vector<Event> events;
        REQUIRE(each_event(*store, "answer", 0, [&](const Event& event) { events.push_back(event); }));
        REQUIRE(events.size() == 2);
        CHECK(events[0].person == 7);
        CHECK(events[0].body == R"({"plan":"x"})");
        CHECK(events[1].corrects == *first);
        CHECK(!events[1].person);
        int others = 0;
        REQUIRE(each_event(*store, "quiz", 0, [&](const Event&) { ++others; }));
        CHECK(others == 0);

        std::string file(300'000, ' ');
        for (std::size_t i = 0; i < file.size(); i += 7) file[i] = static_cast<char>('a' + i % 26);
        REQUIRE(keep_vine(*store, "0123456789abcdef", {std::nullopt, file}));
        REQUIRE(keep_vine(*store, "0123456789abcdef", {std::string("code"), "another"}));
        const auto kept = kept_vine(*store, "0123456789abcdef");
        REQUIRE((kept && *kept));
        CHECK((*kept)->file == file);
        CHECK(!(*kept)->code);
        CHECK(*store->whole("SELECT length(file) FROM kept_vine") < 30'000);
        CHECK(!*kept_vine(*store, "none"));
        REQUIRE(store->run("UPDATE kept_vine SET file = ?1", {Bytes{"300000\nnonsense"}}));
        CHECK(fault_of(kept_vine(*store, "0123456789abcdef")) == "error.store.damaged");
        REQUIRE(keep_rule_set(*store, "h", {"general", 3, "a=1\n"}));
        CHECK((*kept_rule_set(*store, "h"))->lines == "a=1\n");
    }
    TEST_CASE("a copy a day, fourteen kept, none of an empty store") {
        const Folder folder;
        auto store = Store::open(folder.file("data/s.sqlite"));
        REQUIRE(store);
        REQUIRE(back_up_daily(*store, {2026, 1, 1}));
        CHECK(backups_of(*store).empty());
        put(*store, somebody(1));
        for (int day = 1; day <= 20; ++day)
            for (int twice = 0; twice < 2; ++twice) REQUIRE(back_up_daily(*store, {2026, 1, day}));
        const auto backups = backups_of(*store);
        REQUIRE(backups.size() == most_backups);
        CHECK(backups.front().ends_with("store-2026-01-07.sqlite"));
        auto copy = Store::open_to_read(backups.back());
        REQUIRE((copy && *copy));
        CHECK(people_of(**copy)->size() == 1);
    }
    TEST_CASE("forgetting: no byte of the name or its history is left in the store, its log or its copies") {
        for (const bool keep : {false, true}) {
            CAPTURE(keep);
            const Folder folder;
            const std::string path = folder.file("data/s.sqlite");
            {
                auto store = Store::open(path);
                Person person{4711, "Zzyzxname Forgotten", "es", "north", ""};
                put(*store, person);
                person.crew = "Zzyzxname crew";
                put(*store, person);
                put(*store, somebody(5));
                const auto answer = add_event(*store, {0, "answer", 1, noon, 4711, R"({"plan":"Zzyzxplan"})", std::nullopt});
                const auto correction = add_event(*store, {0, "answer", 1, noon, std::nullopt, R"({"plan":"Zzyzxplan again"})", *answer});
                REQUIRE(add_event(*store, {0, "answer", 1, noon, std::nullopt, "{}", *correction}));
                REQUIRE(add_event(*store, {0, "answer", 1, noon, 5, R"({"plan":"other"})", std::nullopt}));
                REQUIRE(back_up_daily(*store, {2026, 1, 1}));
                const auto forgotten = forget_person(*store, 4711, keep, noon);
                REQUIRE_MESSAGE(forgotten, fault_of(forgotten));
                CHECK(forgotten->events_removed == (keep ? 0 : 1));
                CHECK(forgotten->events_kept == (keep ? 1 : 0));
                CHECK(*store->whole("SELECT count(*) FROM event") == (keep ? 4 : 1));
                CHECK(*store->whole("SELECT count(*) FROM event WHERE person = 4711") == 0);
                CHECK(*store->whole("SELECT count(*) FROM event WHERE person < 0") == (keep ? 1 : 0));
                CHECK(people_of(*store)->size() == 1);
                CHECK(backups_of(*store).empty());
                CHECK(fault_of(forget_person(*store, 4711, keep, noon)) == "error.crew.nobody");
            }
            int files = 0;
            for (const auto& entry : std::filesystem::recursive_directory_iterator(folder.path())) {
                if (!entry.is_regular_file()) continue;
                ++files;
                const std::string bytes = test::file_text(entry.path().string());
                CHECK(bytes.find("Zzyzxname") == std::string::npos);
                CHECK(bytes.find("4711") == std::string::npos);
                CHECK((keep || bytes.find("Zzyzxplan") == std::string::npos));
            }
            CHECK(files >= 1);
        }
    }
}
