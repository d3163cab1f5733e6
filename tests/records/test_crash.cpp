// Whatever stops the program or the disk, the store is the old one or the new one, and what was acknowledged is there.
#include <doctest/doctest.h>

#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "scenarios/records/act.h"
#include "scenarios/records/events.h"
#include "scenarios/records/people.h"
#include "scenarios/records/roster.h"
#include "tests/cli/program.h"
#include "tests/support/folder.h"
#include "tests/support/full_size.h"

using namespace spurwright;
using namespace spurwright::records;
using test::Folder;

namespace {

constexpr const char* then = "2026-01-31T12:00:00Z";

Roster roster_of(int first, int people) {
    std::string text = "number,name,language\n";
    for (int i = 0; i < people; ++i) text += std::to_string(first + i) + ",Name " + std::to_string(i) + ",es\n";
    return *read_roster(text, "roster.csv", {}, {"es"});
}

// Runs `child` in a process of its own.
template <class Child>
pid_t forked(Child child) {
    const pid_t pid = ::fork();
    if (pid == 0) {
        child();
        ::_exit(0);
    }
    return pid;
}

[[noreturn]] void killed() {
    ::kill(::getpid(), SIGKILL);
    ::_exit(99);
}

// The steps of an import, one after another, killed before step `step`; whether it came to its end.
bool import_until(const std::string& path, int step) {
    const pid_t child = forked([&] {
        int now = 0;
        const auto next = [&] {
            if (now++ == step) killed();
        };
        next();
        auto store = Store::open(path);
        next();
        auto act = Act::begin(*store, "crew-import", then);
        next();
        for (const RosterRow& row : roster_of(101, 5).rows) {
            if (!put_person(*store, row.person)) ::_exit(98);
            next();
        }
        if (!(*act)->commit()) ::_exit(98);
        next();
        act->reset();
        next();
    });
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK((WIFSIGNALED(status) || WEXITSTATUS(status) == 0));
    return WIFEXITED(status);
}

} // namespace

TEST_SUITE("records/crash") {
    TEST_CASE("killed between any two steps of an import: all of it or nothing, and the store opens") {
        bool ended = false;
        int steps = 0;
        for (int step = 0; !ended; ++step) {
            const Folder folder;
            const std::string path = folder.file("s.sqlite");
            {
                auto store = Store::open(path);
                REQUIRE(take_in(*store, roster_of(1, 3), then));
            }
            ended = import_until(path, step);
            CAPTURE(step);
            auto store = Store::open(path);
            REQUIRE(store);
            const std::size_t people = people_of(*store)->size();
            CHECK((people == 3 || people == 8));
            const bool committed = step >= 8; // opened, begun, five rows, committed
            CHECK(people == (committed ? 8u : 3u));
            CHECK(*store->whole("SELECT count(*) FROM open_act") == 0);
            steps = step;
        }
        CHECK(steps >= 10);
    }
    TEST_CASE("kill -9 at random moments: no acknowledged answer is lost") {
        const int rounds = test::sized(20, 500);
        int acknowledged_in_all = 0;
        const Folder folder;
        const std::string path = folder.file("s.sqlite");
        std::int64_t told_before = 0;
        for (int round = 0; round < rounds; ++round) {
            int ends[2];
            REQUIRE(::pipe(ends) == 0);
            const pid_t child = forked([&] {
                ::close(ends[0]);
                auto store = Store::open(path);
                if (!store) ::_exit(98);
                for (int i = 0; i < 100'000; ++i) {
                    const auto id = add_event(*store, {0, "answer", 1, then, 7, R"({"n":)" + std::to_string(i) + "}", std::nullopt});
                    if (!id || ::write(ends[1], &*id, sizeof *id) != sizeof *id) ::_exit(98);
                }
            });
            ::close(ends[1]);
            std::vector<std::int64_t> acknowledged;
            std::int64_t told = 0;
            if (round % 2 == 0 && ::read(ends[0], &told, sizeof told) == sizeof told) acknowledged.push_back(told); // else anywhere, from its start on
            ::usleep(static_cast<useconds_t>(1'000 + 2'300 * (round * 7 % 20)));
            ::kill(child, SIGKILL);
            for (std::int64_t id = 0; ::read(ends[0], &id, sizeof id) == sizeof id;) acknowledged.push_back(id);
            ::close(ends[0]);
            int status = 0;
            ::waitpid(child, &status, 0);
            auto store = Store::open(path);
            REQUIRE(store);
            std::int64_t last = 0, count = 0;
            REQUIRE(each_event(*store, "answer", told_before, [&](const Event& event) { last = event.id, ++count; }));
            if (!acknowledged.empty()) {
                CHECK(last >= acknowledged.back());
                CHECK(count >= static_cast<std::int64_t>(acknowledged.size()));
            }
            CHECK(count <= static_cast<std::int64_t>(acknowledged.size()) + 1); // one at most was written and not yet told
            acknowledged_in_all += static_cast<int>(acknowledged.size());
            told_before = std::max(told_before, last);
        }
        MESSAGE(rounds, " rounds, ", acknowledged_in_all, " answers acknowledged");
        CHECK(acknowledged_in_all >= rounds / 2);
    }
    TEST_CASE("book import killed at random moments: every weighing of the file or none, and all of them once it said so") {
        const Folder folder;
        const std::vector<std::string> home{"XDG_DATA_HOME=" + folder.path()};
        std::string text = "block,tag,winter,weight_kg\n";
        for (int i = 0; i < 4'000; ++i) text += "north," + std::to_string(i % 400) + "," + std::to_string(2010 + i / 400) + ",1.25\n";
        const std::string table = folder.write("w.csv", text), path = folder.file("spurwright/store.sqlite");
        const auto weighings = [&] {
            auto store = Store::open(path);
            REQUIRE(store);
            return **store->whole("SELECT count(*) FROM weighing");
        };
        int none = 0, all = 0;
        for (int round = 0; round < test::sized(12, 100); ++round) {
            REQUIRE(test::run_program_of(SPURWRIGHT_PROGRAM, {"book", "block", "north", "--spacing", "1.8m"}, home).status == 0);
            test::Running import(SPURWRIGHT_PROGRAM, {"book", "import", table}, home);
            for (int slept = 0; slept < 20 + 25 * (round % 12) && !import.ended(); ++slept) ::usleep(1'000);
            const bool said = import.ended();
            import.kill();
            const std::int64_t found = weighings();
            CAPTURE(round);
            CHECK((found == 0 || found == 4'000));
            if (said) CHECK(found == 4'000);
            ++(found == 0 ? none : all);
            while (weighings() > 0) REQUIRE(test::run_program_of(SPURWRIGHT_PROGRAM, {"book", "undo"}, home).status == 0);
        }
        MESSAGE(none, " imports left nothing, ", all, " were whole");
    }
    TEST_CASE("a full disk: a sentence, nothing half, and the next act goes in when there is room again") {
        const Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(store);
        REQUIRE(take_in(*store, roster_of(1, 3), then));
        const auto pages = store->whole("PRAGMA page_count");
        REQUIRE(store->text("PRAGMA max_page_count=" + std::to_string(**pages + 4)));
        const auto refused = take_in(*store, roster_of(1000, 5000), then);
        REQUIRE(!refused);
        CHECK(refused.error().key.name == "error.file.full");
        CHECK(refused.error().fault == Fault::cannot_write);
        CHECK(people_of(*store)->size() == 3);
        REQUIRE(store->text("PRAGMA max_page_count=1000000"));
        REQUIRE(take_in(*store, roster_of(1000, 5000), then));
        CHECK(people_of(*store)->size() == 5003);
    }
    TEST_CASE("files that may not grow at any size: old or new, never a third, and a sentence") {
        int refused = 0, taken = 0;
        for (rlim_t most = 4096; most < 700'000; most += 24'576) {
            const Folder folder;
            const std::string path = folder.file("s.sqlite");
            {
                auto store = Store::open(path);
                REQUIRE(take_in(*store, roster_of(1, 3), then));
            }
            const pid_t child = forked([&] {
                ::signal(SIGXFSZ, SIG_IGN);
                const rlimit limit{most, most};
                ::setrlimit(RLIMIT_FSIZE, &limit);
                auto store = Store::open(path);
                if (!store) ::_exit(store.error().key.name.empty() ? 97 : 1);
                const auto done = take_in(*store, roster_of(101, 1000), then);
                ::_exit(done ? 0 : done.error().key.name.empty() ? 97 : 1);
            });
            int status = 0;
            ::waitpid(child, &status, 0);
            CAPTURE(most);
            REQUIRE(WIFEXITED(status));
            REQUIRE(WEXITSTATUS(status) <= 1);
            auto store = Store::open(path);
            REQUIRE(store);
            const bool done = WEXITSTATUS(status) == 0;
            CHECK(people_of(*store)->size() == (done ? 1003u : 3u));
            ++(done ? taken : refused);
        }
        CHECK(refused > 3);
        CHECK(taken > 3);
    }
}
