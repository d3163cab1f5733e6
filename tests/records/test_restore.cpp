// records restore as a person runs it: a copy put back whole, what was there kept aside whole, every refusal with nothing
// changed.
#include <doctest/doctest.h>

#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <thread>

#include "scenarios/records/answer.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/people.h"
#include "scenarios/records/roster.h"
#include "scenarios/settings/work_lock.h"
#include "tests/cli/shed.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::records;
using nlohmann::json;
using test::Ran;
using test::Shed;

namespace {

constexpr const char* back_then = "2026-01-31T12:00:00Z";

std::string shed_store(const Shed& shed) { return shed.folder.file("data/spurwright/store.sqlite"); }
std::vector<std::string> shed_copies(const Shed& shed) {
    auto store = Store::open(shed_store(shed));
    REQUIRE(store);
    return copies_of(*store);
}

void put_number(const Shed& shed, int number) {
    const std::string list = "number,name,language\n" + std::to_string(number) + ",Ana,es\n";
    shed.object({"crew", "import", shed.folder.write("crew.csv", list)}, "verb-crew-import");
}
std::size_t people_in(const Shed& shed) { return shed.object({"crew", "list"}, "verb-crew-list")["people"].size(); }

// One person; a copy of that; a second person.
std::string copy_of_one(const Shed& shed) {
    put_number(shed, 7);
    const std::string copy = shed.folder.file("copia ñ.sqlite");
    shed.object({"records", "backup", "-o", copy}, "verb-records-backup");
    put_number(shed, 8);
    return copy;
}

// The refusal of a restore that changes nothing, to the byte.
std::string refused_unchanged(const Shed& shed, const std::string& file) {
    const std::string before = test::file_text(shed_store(shed));
    const std::size_t files = shed.folder.files();
    const std::string said = shed.refused({"records", "restore", file});
    CHECK(test::file_text(shed_store(shed)) == before);
    CHECK(shed.folder.files() == files);
    CHECK(said.starts_with("spurwright: "));
    CHECK(said.find('\n') == said.size() - 1); // one sentence
    return said;
}

} // namespace

TEST_SUITE("records/restore") {
    TEST_CASE("a copy is put back whole; what was there lies aside whole, and restoring that goes back to it") {
        const Shed shed;
        const std::string copy = copy_of_one(shed), bytes = test::file_text(copy);
        const json done = shed.object({"records", "restore", copy}, "verb-records-restore");
        CHECK(done["people"] == 1);
        CHECK(done["was_damaged"] == false);
        CHECK(people_in(shed) == 1);
        CHECK(test::file_text(copy) == bytes); // only read
        const std::string aside = done["aside"];
        CHECK(std::filesystem::path(aside).filename().string().starts_with("before-2"));
        CHECK(shed.object({"records", "check"}, "verb-records-check")["damaged"].empty());
        const json again = shed.object({"records", "restore", aside}, "verb-records-restore");
        CHECK(again["people"] == 2);
        CHECK(people_in(shed) == 2);
        CHECK(again["aside"] != aside); // never over what is there
        put_number(shed, 9); // and it goes on
        CHECK(people_in(shed) == 3);
        for (const char* language : {"en", "es"}) {
            const Ran text = shed.run({"records", "restore", copy, "--language", language});
            CHECK(text.status == 0);
            CHECK(text.out.find(copy.substr(copy.rfind('/') + 1)) != std::string::npos);
            CHECK(text.out.find('[') == std::string::npos);
        }
    }
    TEST_CASE("on a machine that kept nothing yet: the copy is all there is") {
        const Shed from, to;
        const std::string copy = copy_of_one(from);
        const json done = to.object({"records", "restore", copy}, "verb-records-restore");
        CHECK(done["aside"].is_null());
        CHECK(people_in(to) == 1);
    }
    TEST_CASE("no file, a folder, the records themselves, another file, a cut copy, one that lacks a vine, a newer one: one sentence, exit 2, nothing changed") {
        const Shed shed;
        const std::string copy = copy_of_one(shed), whole = test::file_text(copy);
        CHECK(refused_unchanged(shed, shed.folder.file("none.sqlite")).find("There is no such file.") != std::string::npos);
        CHECK(refused_unchanged(shed, shed.folder.path()).find("This is a folder") != std::string::npos);
        CHECK(refused_unchanged(shed, shed_store(shed)).find("the records themselves") != std::string::npos);
        CHECK(refused_unchanged(shed, shed.folder.write("x.txt", "number,name\n")).find("no file of records") != std::string::npos);
        CHECK(refused_unchanged(shed, shed.folder.write("empty", "")).find("no file of records") != std::string::npos);
        for (const std::size_t part : {1u, 2u, 3u}) {
            CAPTURE(part);
            refused_unchanged(shed, shed.folder.write("cut.sqlite", whole.substr(0, whole.size() * part / 4)));
        }
        const std::string torn = shed.folder.write("torn.sqlite", whole.substr(0, whole.size() / 2) + std::string(whole.size() - whole.size() / 2, 'x'));
        CHECK(refused_unchanged(shed, torn).find("This copy is damaged") != std::string::npos);
        const std::string newer = shed.folder.write("newer.sqlite", whole), lacking = shed.folder.write("lacking.sqlite", whole);
        REQUIRE(Store::open(newer)->run("UPDATE meta SET value = '99' WHERE key = 'schema'"));
        CHECK(refused_unchanged(shed, newer).find("version 99") != std::string::npos);
        {
            auto store = Store::open(lacking);
            REQUIRE(keep_what_it_needs(*store, test::little_vine(), "", {}, "general"));
            REQUIRE(store->run("UPDATE kept_vine SET hash = '0123456789abcdef'"));
        }
        CHECK(refused_unchanged(shed, lacking).find("This copy is damaged in 1 place: Its vine is damaged in the records.") != std::string::npos);
        const json error = json::parse(shed.run({"records", "restore", lacking, "--json"}).err);
        CHECK(test::schema_fault("error", error.dump()) == "");
        CHECK(shed.run({"records", "restore", lacking, "--language", "es"}).err.find("Esta copia está dañada en 1 lugar") != std::string::npos);
        CHECK(shed.run({"records", "restore"}).err == "spurwright: records restore: FILE is missing.\n");
        CHECK(people_in(shed) == 2);
    }
    TEST_CASE("while a window is open it is refused; once it is closed, or its process died, it goes") {
        const Shed shed;
        const std::string copy = copy_of_one(shed), work = shed.folder.file("data/spurwright/work");
        std::filesystem::create_directories(work);
        {
            const settings::WorkLock window(work);
            REQUIRE(window.held());
            CHECK(refused_unchanged(shed, copy).find("A window of this program is open") != std::string::npos);
        }
        int ends[2];
        REQUIRE(::pipe(ends) == 0);
        const pid_t child = ::fork();
        if (child == 0) {
            const settings::WorkLock window(work);
            if (::write(ends[1], window.held() ? "y" : "n", 1) != 1) ::_exit(1);
            ::pause();
            ::_exit(0);
        }
        char held = 0;
        REQUIRE(::read(ends[0], &held, 1) == 1);
        CHECK(held == 'y');
        CHECK(refused_unchanged(shed, copy).find("A window of this program is open") != std::string::npos);
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        shed.object({"records", "restore", copy}, "verb-records-restore");
        CHECK(people_in(shed) == 1);
    }
    TEST_CASE("records that are damaged or no store at all are what a copy is for: they lie aside as they were") {
        const Shed shed;
        const std::string copy = copy_of_one(shed), path = shed_store(shed);
        for (const bool cut : {false, true}) {
            CAPTURE(cut);
            const std::string spoilt = cut ? test::file_text(copy).substr(0, 9'000) : std::string("no records");
            shed.folder.write("data/spurwright/store.sqlite", spoilt);
            shed.folder.write("data/spurwright/store.sqlite-wal", "a log that belongs to nothing"); // must not be read with the copy
            const json done = shed.object({"records", "restore", copy}, "verb-records-restore");
            CHECK(done["was_damaged"] == true);
            const std::string aside = done["aside"];
            CHECK(test::file_text(aside) == spoilt);
            CHECK(people_in(shed) == 1);
            CHECK(shed.object({"records", "check"}, "verb-records-check")["damaged"].empty());
        }
    }
    TEST_CASE("records of a newer program stay: nothing of an older one goes over them") {
        const Shed shed;
        const std::string copy = copy_of_one(shed);
        REQUIRE(Store::open(shed_store(shed))->run("UPDATE meta SET value = '99' WHERE key = 'schema'"));
        const std::string before = test::file_text(shed_store(shed));
        CHECK(shed.refused({"records", "restore", copy}).find("version 99") != std::string::npos);
        CHECK(test::file_text(shed_store(shed)) == before);
    }
    TEST_CASE("forgetting takes what was kept aside too") {
        const Shed shed;
        const std::string copy = copy_of_one(shed);
        shed.object({"records", "restore", copy}, "verb-records-restore");
        REQUIRE(!shed_copies(shed).empty());
        shed.object({"crew", "forget", "7"}, "verb-crew-forget");
        CHECK(shed_copies(shed).empty());
    }
    TEST_CASE("another program that reads meanwhile sees the old records, then the new; one that writes is waited for") {
        const test::Folder folder;
        const auto with_people = [&](const char* name, int first, int people) {
            auto store = Store::open(folder.file(name));
            for (int i = 0; i < people; ++i) REQUIRE(put_person(*store, {first + i, "", "es", "", ""}));
            return *std::move(store);
        };
        Store present = with_people("s.sqlite", 1, 3), copy = with_people("c.sqlite", 11, 5);
        auto reader = Store::open(folder.file("s.sqlite"));
        CHECK(people_of(*reader)->size() == 3);
        REQUIRE(reader->run("BEGIN"));
        CHECK(people_of(*reader)->size() == 3);
        REQUIRE(put_back(present, copy, {2026, 2, 1}));
        CHECK(people_of(*reader)->size() == 3); // still within what it began
        REQUIRE(reader->run("COMMIT"));
        CHECK(people_of(*reader)->size() == 5);
        REQUIRE(reader->run("BEGIN IMMEDIATE"));
        REQUIRE(put_person(*reader, {99, "", "es", "", ""}));
        std::thread writer([&] {
            std::this_thread::sleep_for(std::chrono::milliseconds(300));
            [[maybe_unused]] const auto done = reader->run("COMMIT");
        });
        const auto aside = put_back(present, copy, {2026, 2, 1});
        writer.join();
        REQUIRE(aside);
        CHECK(people_of(present)->size() == 5);
    }
    TEST_CASE("a folder that may only be read, and files that may not grow at any size: a sentence, old or new, never a third") {
        const test::Folder start;
        std::string ready, copy_file = start.file("copy.sqlite");
        {
            auto store = Store::open(start.file("s.sqlite"));
            REQUIRE(put_person(*store, {1, "", "es", "", ""}));
        }
        ready = test::file_text(start.file("s.sqlite"));
        {
            auto other = Store::open(start.file("o.sqlite"));
            for (int i = 1; i <= 3'000; ++i) REQUIRE(put_person(*other, {i, "Name", "es", "", ""}));
            REQUIRE(write_copy(*other, copy_file));
        }
        int refused = 0, done = 0;
        for (rlim_t most = 4'096; most < 2'400'000; most += most < 200'000 ? 16'384 : 150'000) {
            const test::Folder folder;
            const std::string path = folder.write("s.sqlite", ready);
            const pid_t child = ::fork();
            if (child == 0) {
                ::signal(SIGXFSZ, SIG_IGN);
                const rlimit limit{most, most};
                ::setrlimit(RLIMIT_FSIZE, &limit);
                auto present = Store::open(path);
                auto copy = Store::open_to_read(copy_file);
                if (!present || !copy) ::_exit(1);
                const auto aside = put_back(*present, **copy, {2026, 2, 1});
                ::_exit(aside ? 0 : aside.error().key.name.empty() ? 97 : 1);
            }
            int status = 0;
            ::waitpid(child, &status, 0);
            CAPTURE(most);
            REQUIRE(WIFEXITED(status));
            REQUIRE(WEXITSTATUS(status) <= 1);
            auto store = Store::open(path);
            REQUIRE(store);
            CHECK(people_of(*store)->size() == (WEXITSTATUS(status) == 0 ? 3'000u : 1u));
            for (const std::string& kept : copies_of(*store)) {
                auto aside = Store::open_to_read(kept);
                REQUIRE((aside && *aside));
                CHECK(people_of(**aside)->size() == 1);
            }
            ++(WEXITSTATUS(status) == 0 ? done : refused);
        }
        CHECK(refused >= 3);
        CHECK(done >= 3);
        REQUIRE(::chmod(start.path().c_str(), 0555) == 0);
        const bool superuser = ::geteuid() == 0; // whom nothing stops: then as nobody
        REQUIRE((!superuser || ::seteuid(65534) == 0));
        CHECK(!Store::open(start.file("s.sqlite")));
        REQUIRE((!superuser || ::seteuid(0) == 0));
        REQUIRE(::chmod(start.path().c_str(), 0755) == 0);
    }
}
