// The journal of answers in progress: what was acknowledged is there after a crash, whatever the crash left.
#include <doctest/doctest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <string>

#include "scenarios/io/journal.h"
#include "scenarios/io/safe_file.h"
#include "tests/support/folder.h"
#include "tests/support/full_size.h"

using namespace spurwright;
using io::Journal;

namespace {

struct Scratch : test::Folder {
    std::string path() const { return file("journal"); }
};

}  // namespace

TEST_CASE("an entry begins with its length and its CRC-32C [RFC 3720 B.4: 32 bytes of zeros give 8a9136aa]") {
    const std::string entry = io::entry_bytes(std::string(32, '\0'));
    REQUIRE(entry.size() == 40);
    CHECK(entry.substr(0, 8) == std::string("\x20\0\0\0\xaa\x36\x91\x8a", 8));
    CHECK(io::entry_bytes(std::string(32, '\xff')).substr(4, 4) == "\x43\xab\xa8\x62");  // the second vector: 62a8ab43
}

TEST_CASE("entries are read back; a torn tail of any length is set aside and the rest goes on") {
    const std::string whole = io::entry_bytes("one") + io::entry_bytes("") + io::entry_bytes("three");
    for (std::size_t cut = 0; cut <= whole.size(); ++cut) {
        CAPTURE(cut);
        const Scratch scratch;
        REQUIRE(io::write_file(scratch.path(), std::string_view(whole).substr(0, cut)));
        auto journal = Journal::open(scratch.path());
        REQUIRE(journal);
        const std::size_t entries = cut >= whole.size() ? 3 : cut >= 19 ? 2 : cut >= 11 ? 1 : 0;
        CHECK(journal->entries().size() == entries);
        CHECK(journal->had_tail() == (cut != 0 && cut != 11 && cut != 19 && cut != whole.size()));
        REQUIRE(journal->append("more"));
        auto again = Journal::open(scratch.path());
        REQUIRE(again);
        REQUIRE(again->entries().size() == entries + 1);
        CHECK(again->entries().back() == "more");
        CHECK_FALSE(again->had_tail());
    }
}

TEST_CASE("one bit turned in an entry ends the journal there, and the tail is kept beside") {
    std::string bytes = io::entry_bytes("one") + io::entry_bytes("two");
    bytes[20] = static_cast<char>(bytes[20] ^ 1);
    const Scratch scratch;
    REQUIRE(io::write_file(scratch.path(), bytes));
    auto journal = Journal::open(scratch.path());
    REQUIRE(journal);
    CHECK(journal->entries() == std::vector<std::string>{"one"});
    const auto tail = io::read_file(scratch.path() + ".tail", 1'000);
    REQUIRE(tail);
    CHECK(*tail == bytes.substr(11));
}

TEST_CASE("killed at any moment, no acknowledged answer is lost") {
    const int rounds = test::sized(20, 500);
    for (int round = 0; round < rounds; ++round) {
        const Scratch scratch;
        int acknowledged[2];
        REQUIRE(::pipe(acknowledged) == 0);
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {  // writes and acknowledges until it is killed
            ::close(acknowledged[0]);
            auto journal = Journal::open(scratch.path());
            for (int i = 0; journal && i < 100'000; ++i) {
                if (!journal->append("answer " + std::to_string(i))) break;
                const char byte = 1;
                if (::write(acknowledged[1], &byte, 1) != 1) break;
            }
            ::_exit(0);
        }
        ::close(acknowledged[1]);
        ::usleep(static_cast<useconds_t>(500 + 700 * (round % 20)));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        std::size_t said = 0;
        char bytes[4096];
        for (ssize_t got = 0; (got = ::read(acknowledged[0], bytes, sizeof bytes)) > 0;) said += static_cast<std::size_t>(got);
        ::close(acknowledged[0]);
        auto journal = Journal::open(scratch.path());
        REQUIRE(journal);
        CHECK(journal->entries().size() >= said);
        CHECK(journal->entries().size() <= said + 1);
        for (std::size_t i = 0; i < journal->entries().size(); ++i) CHECK(journal->entries()[i] == "answer " + std::to_string(i));
    }
}

TEST_CASE("a journal that cannot be opened is refused with a sentence and nothing is changed") {
    const Scratch scratch;
    CHECK_FALSE(Journal::open(scratch.test::Folder::path()));
    CHECK_FALSE(Journal::open("/nowhere/at/all/journal"));
}

