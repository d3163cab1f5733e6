// Whole files in and out: never half, never over a device.
#include <doctest/doctest.h>

#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "scenarios/io/safe_file.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::io;

namespace {

using test::Folder;

std::string fault(const Result<void>& result) { return result ? "written" : std::string(result.error().key.name); }
std::string fault(const Result<std::string>& result) { return result ? "read" : std::string(result.error().key.name); }

} // namespace

TEST_SUITE("scenarios/safe-file") {
    TEST_CASE("what is written is read, the old one is replaced whole, and nothing stays beside") {
        const Folder folder;
        const std::string path = folder.path() + "/v.json";
        const std::string bytes("a\0b\n", 4);
        CHECK(fault(write_file(path, bytes)) == "written");
        CHECK(*read_file(path, 100) == bytes);
        REQUIRE(::chmod(path.c_str(), 0640) == 0);
        CHECK(fault(write_file(path, "new")) == "written");
        CHECK(*read_file(path, 100) == "new");
        struct stat there {};
        REQUIRE(::stat(path.c_str(), &there) == 0);
        CHECK((there.st_mode & 0777) == 0640);
        CHECK(folder.files() == 1);
    }
    TEST_CASE("a link stays a link, and what it leads to is written") {
        const Folder folder;
        REQUIRE(fault(write_file(folder.path() + "/real", "old")) == "written");
        std::filesystem::create_symlink("real", folder.path() + "/link");
        CHECK(fault(write_file(folder.path() + "/link", "new")) == "written");
        CHECK(std::filesystem::is_symlink(folder.path() + "/link"));
        CHECK(*read_file(folder.path() + "/real", 100) == "new");
    }
    TEST_CASE("no such folder, a folder, a device: refused, and nothing is made") {
        const Folder folder;
        CHECK(fault(write_file(folder.path() + "/no/v.json", "x")) == "error.file.no-folder");
        CHECK(fault(write_file(folder.path(), "x")) == "error.file.is-folder");
        CHECK(fault(write_file("/dev/full", "x")) == "error.file.not-plain");
        CHECK(fault(write_file("/dev/null", "x")) == "error.file.not-plain");
        CHECK(fault(write_file(folder.path() + "/" + std::string(300, 'n'), "x")) == "error.file.long-name");
        CHECK(folder.files() == 0);
    }
    TEST_CASE("reading: no such file, a folder, more than the limit") {
        const Folder folder;
        CHECK(fault(read_file(folder.path() + "/none", 100)) == "error.file.no-such");
        CHECK(fault(read_file(folder.path(), 100)) == "error.file.is-folder");
        REQUIRE(fault(write_file(folder.path() + "/big", std::string(101, 'x'))) == "written");
        CHECK(fault(read_file(folder.path() + "/big", 101)) == "read");
        CHECK(fault(read_file(folder.path() + "/big", 100)) == "error.file.too-large");
        CHECK(fault(read_file("/dev/zero", 1'000'000)) == "error.file.too-large");
    }
}
