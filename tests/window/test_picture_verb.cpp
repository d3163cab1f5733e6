// The verb `picture` from outside: what it draws, that `spurwright` hands it over, and every refusal with its sentence.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "tests/scenarios/schema.h"
#include "tests/window/drawing_program.h"

using namespace spurwright::test;

namespace {

const std::string code = "00RM-K1SX-G00Q-0004-0005-046T";

// Draws with these options; the bytes of the file.
std::string drawn(std::vector<std::string> arguments, const std::string& program = drawing_program) {
    const Folder folder;
    arguments.insert(arguments.begin(), "picture");
    if (std::find(arguments.begin(), arguments.end(), "--size") == arguments.end()) arguments.insert(arguments.end(), {"--size", "96x54"});
    arguments.insert(arguments.end(), {"-o", "x.png"});
    const Ran ran = run_program_of(program, arguments, {}, folder.path());
    CHECK(ran.status == 0);
    CHECK(ran.err.empty());
    CHECK(ran.out.ends_with(".\n"));
    CHECK(folder.files() == 1);
    return file_text(folder.file("x.png"));
}

// Width and height as the file itself says them.
std::pair<int, int> size_in(const std::string& png) {
    const auto number = [&](std::size_t at) {
        int n = 0;
        for (std::size_t k = 0; k < 4; ++k) n = 256 * n + static_cast<unsigned char>(png[at + k]);
        return n;
    };
    if (png.size() < 24 || png.substr(1, 3) != "PNG") return {0, 0};
    return {number(16), number(20)};
}

// Refused in text and in JSON with nothing written; the line of the text.
std::string refused(std::vector<std::string> arguments, int status = 2, const std::vector<std::string>& environment = {}, const std::string& program = drawing_program) {
    const Folder folder;
    arguments.insert(arguments.begin(), "picture");
    const Ran text = run_program_of(program, arguments, environment, folder.path());
    CHECK(text.status == status);
    CHECK(text.out.empty());
    CHECK(text.err.starts_with("spurwright: "));
    CHECK(text.err.ends_with(".\n"));
    CHECK(std::count(text.err.begin(), text.err.end(), '\n') == 1);
    CHECK(folder.files() == 0);
    arguments.push_back("--json");
    const Ran json = run_program_of(program, arguments, environment, folder.path());
    CHECK(json.status == status);
    CHECK(json.out.empty());
    CHECK(schema_fault("error", json.err) == "");
    if (text.err.size() < 13) return {};
    return text.err.substr(12, text.err.size() - 13);
}

}  // namespace

TEST_SUITE("window/picture-verb") {
    TEST_CASE("a vine by code and by file, as large as asked, says what was written") {
        NEED_OFFSCREEN
        CHECK(size_in(drawn({code})) == std::pair{96, 54});
        CHECK(size_in(drawn({little_file, "--size", "64x100"})) == std::pair{64, 100});
        const Folder folder;
        const Ran json = run_program_of(drawing_program, {"picture", little_file, "--size", "16x16", "-o", folder.file("x.png"), "--json"});
        CHECK(json.status == 0);
        CHECK(schema_fault("verb-picture", json.out) == "");
        CHECK(json.out.find("\"width\": 16") != std::string::npos);
        CHECK(size_in(file_text(folder.file("x.png"))) == std::pair{16, 16});
    }
    TEST_CASE("each view, each light and a plan give a picture of their own, the same one twice") {
        NEED_OFFSCREEN
        std::vector<std::string> all{drawn({little_file}), drawn({little_file, "--light", "overcast"}), drawn({little_file, "--plan", "cut a5.1+20.0 shears"})};
        for (const char* view : {"whole", "step-back", "other-side", "along", "head", "cane", "above"}) all.push_back(drawn({little_file, "--view", view}));
        CHECK(drawn({little_file, "--view", "row", "--light", "sun"}) == all[0]);
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t k = 0; k < i; ++k) CHECK(all[i] != all[k]);
    }
    TEST_CASE("spurwright hands the verb to its sibling: the same bytes") {
        NEED_OFFSCREEN
        CHECK(drawn({little_file}, SPURWRIGHT_PROGRAM) == drawn({little_file}));
        CHECK(refused({little_file, "--size", "0x0", "-o", "x.png"}, 2, {}, SPURWRIGHT_PROGRAM) == "--size: A picture of 0x0 cannot be drawn; width and height may be 16 to 8192.");
    }
    TEST_CASE("a size of nothing, of too much, or that is none") {
        CHECK(refused({little_file, "--size", "0x720", "-o", "x.png"}) == "--size: A picture of 0x720 cannot be drawn; width and height may be 16 to 8192.");
        CHECK(refused({little_file, "--size", "1280x0", "-o", "x.png"}) == "--size: A picture of 1280x0 cannot be drawn; width and height may be 16 to 8192.");
        CHECK(refused({little_file, "--size", "100000x100000", "-o", "x.png"}) == "--size: A picture of 100000x100000 cannot be drawn; width and height may be 16 to 8192.");
        CHECK(refused({little_file, "--size", "-5x20", "-o", "x.png"}) == "--size: A picture of -5x20 cannot be drawn; width and height may be 16 to 8192.");
        CHECK(refused({little_file, "--size", "99999999999999999999x20", "-o", "x.png"}) ==
              "--size: A picture of 99999999999999999999x20 cannot be drawn; width and height may be 16 to 8192.");
        for (const char* none : {"", "big", "1280", "1280x", "x720", "1280*720", "1280x720x3", " 1280x720", "1e3x720"})
            CHECK(refused({little_file, "--size", none, "-o", "x.png"}) == "--size: \"" + std::string(none) + "\" is no size; write width and height like 1280x720.");
    }
    TEST_CASE("a view or light that is none names those there are") {
        CHECK(refused({little_file, "--view", "moon", "-o", "x.png"}).starts_with("--view: "));
        CHECK(refused({little_file, "--view", "moon", "-o", "x.png"}).find("row, whole, step-back, other-side, along, head, cane, above") != std::string::npos);
        CHECK(refused({little_file, "--light", "Sun", "-o", "x.png"}).find("sun, overcast") != std::string::npos);
        CHECK(refused({little_file, "--light", "", "-o", "x.png"}).starts_with("--light: "));
    }
    TEST_CASE("a vine or plan that is none, words too many or missing") {
        CHECK(refused({"00RM-K1SY-G00Q-0004-0005-046T", "-o", "x.png"}) == "group 2 of the code: Group 2 of 6, K1SY, was mistyped.");
        CHECK(refused({"no-such-file.json", "-o", "x.png"}).find("no-such-file.json") != std::string::npos);
        CHECK(refused({little_file, "--plan", "hack a5", "-o", "x.png"}) == "plan, edit 1, column 1: \"hack\" is no act; cut, lay, tie and mark are.");
        CHECK(refused({little_file}).starts_with("picture: -o FILE is missing"));
        CHECK(refused({"-o", "x.png"}).starts_with("picture: CODE|FILE is missing"));
        CHECK(refused({little_file, "--colour", "red", "-o", "x.png"}).find("no option \"--colour\"") != std::string::npos);
    }
    TEST_CASE("where the file cannot be written, its path is named and nothing is left behind") {
        NEED_OFFSCREEN
        CHECK(refused({little_file, "--size", "16x16", "-o", "nowhere/x.png"}).find("nowhere/x.png") != std::string::npos);
        CHECK(refused({little_file, "--size", "16x16", "-o", "/dev/null"}).find("/dev/null") != std::string::npos);
        const Folder folder;
        CHECK(refused({little_file, "--size", "16x16", "-o", folder.path()}).find(folder.path()) != std::string::npos);
    }
    TEST_CASE("without the drawing program beside it spurwright says so, status 3") {
        const Folder folder;
        const std::string alone = folder.file("spurwright");
        std::filesystem::copy_file(SPURWRIGHT_PROGRAM, alone);
        const std::vector<std::string> assets{"SPURWRIGHT_ASSETS=" SPURWRIGHT_SOURCE "/assets"};
        CHECK(refused({little_file, "-o", "x.png"}, 3, assets, alone).find("spurwright-window") != std::string::npos);
        // What it can refuse by itself, it refuses first.
        CHECK(refused({little_file}, 2, assets, alone).starts_with("picture: -o FILE is missing"));
    }
    TEST_CASE("without EGL or its driver: one sentence, status 3") {
        CHECK(refused({little_file, "-o", "x.png"}, 3, {"__EGL_VENDOR_LIBRARY_FILENAMES=/nowhere.json"}).find("EGL") != std::string::npos);
    }
    TEST_CASE("without the shader files: their path, status 3") {
        NEED_OFFSCREEN
        const Folder folder;
        std::filesystem::copy(SPURWRIGHT_SOURCE "/assets", folder.file("assets"), std::filesystem::copy_options::recursive);
        std::filesystem::remove_all(folder.file("assets/shaders"));
        CHECK(refused({little_file, "-o", "x.png"}, 3, {"SPURWRIGHT_ASSETS=" + folder.file("assets")}).find("shaders/frame.glsl") != std::string::npos);
    }
}
