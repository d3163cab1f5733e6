// What can be wrong around the window when it opens: no display, no font, settings that are none, another window on the
// same work, nothing to draw on. A sentence each, and the rest keeps working.
#include <doctest/doctest.h>

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/window/drawing_program.h"

using namespace spurwright::test;
using nlohmann::json;

namespace {

const std::string settings_seen = R"({"kind": "spurwright-settings", "version": 1, "safety_seen": true})";

// A home with these settings, or with none where the text is empty.
std::string settings_of(const Folder& home, const std::string& text) {
    std::filesystem::create_directories(home.file("config/spurwright"));
    return home.write("config/spurwright/settings.json", text);
}

// Plays the acts in the window without a window.
Ran played(const Folder& home, const std::string& acts, std::vector<std::string> arguments = {}, std::vector<std::string> environment = {}) {
    const auto kept = kept_in(home);
    environment.insert(environment.end(), kept.begin(), kept.end());
    arguments.insert(arguments.end(), {"--size", "640x360", "--seed", "1", "--script", home.write("acts", acts)});
    return run_program_of(drawing_program, arguments, environment, home.path());
}

json report_in(const Folder& home, const std::string& name) { return json::parse(file_text(home.file(name)), nullptr, false); }

std::string sentence(const Ran& ran, int status) {
    CHECK(ran.status == status);
    CHECK(ran.out.empty());
    CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
    CHECK(ran.err.starts_with("spurwright: "));
    return ran.err;
}

}  // namespace

TEST_SUITE("window/opening") {
    TEST_CASE("without a display: one sentence, status 3, and what can be had without one") {
        const Folder home;
        const Ran ran = run_program_of(drawing_program, {}, kept_in(home), home.path());
        CHECK(sentence(ran, 3).find("There is no display to open a window on") != std::string::npos);
    }
    TEST_CASE("without the font: one sentence with its package, status 3") {
        NEED_OFFSCREEN
        const Folder home;
        const std::string no_fonts = home.write("fonts.conf", "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>");
        const Ran ran = played(home, "report r.json\n", {}, {"FONTCONFIG_FILE=" + no_fonts});
        CHECK(sentence(ran, 3).find("fonts-dejavu-core") != std::string::npos);
        CHECK_FALSE(std::filesystem::exists(home.file("r.json")));
    }
    TEST_CASE("options and scripts that are none are refused with what and where, status 2") {
        NEED_OFFSCREEN
        const Folder home;
        const auto kept = kept_in(home);
        const auto asked = [&](std::vector<std::string> words) { return sentence(run_program_of(drawing_program, words, kept, home.path()), 2); };
        CHECK(asked({"--size", "0x0"}).find("--size: A picture of 0x0 cannot be drawn") != std::string::npos);
        CHECK(asked({"--seed", "many"}).find("--seed: ") != std::string::npos);
        CHECK(asked({"--script"}).find("--script: A value must follow") != std::string::npos);
        CHECK(asked({"--script", "nowhere"}).find("nowhere") != std::string::npos);
        CHECK(asked({"--code", "00RM", "--script", home.write("empty", "")}).find("A vine code has 24 characters; this has 4") != std::string::npos);
        CHECK(sentence(played(home, "report r.json\nresize -3 2\n"), 2).find("--script:2: ") != std::string::npos);
        CHECK(sentence(played(home, "dance\n"), 2).find("--script:1: ") != std::string::npos);
        CHECK(sentence(played(home, "click no-such-thing\n"), 2).find("no-such-thing") != std::string::npos);
    }
    TEST_CASE("settings that are none: said once, defaults for this run, the file as it was to the byte") {
        NEED_OFFSCREEN
        for (const std::string nonsense : {"", "{", "not json at all", "{\"kind\": \"spurwright-settings\", \"version\": 1, \"text_percent\": 9000}",
                                           "{\"kind\": \"spurwright-settings\", \"version\": 99}", "[[[[[[", "\xff\xfe\x00"}) {
            const Folder home;
            const std::string path = settings_of(home, nonsense);
            // Past the safety card, which would be noted in the file where it could be read.
            const Ran ran = played(home, "report r.json\nclick safety.read\nreport s.json\n");
            CHECK(ran.status == 0);
            CHECK(ran.err.empty());
            CHECK(file_text(path) == nonsense);
            const json report = report_in(home, "r.json");
            REQUIRE(report.is_object());
            CHECK(report["screen"] == "safety");
            CHECK(report_in(home, "s.json")["screen"] == "home");
            CHECK(report["language"] == "en");
            CHECK(report["message"].get<std::string>().find("cannot be read. Defaults hold for this time") != std::string::npos);
        }
    }
    TEST_CASE("a second window on the same work may look and cut, says so, and keeps nothing") {
        NEED_OFFSCREEN
        const Folder home;
        settings_of(home, settings_seen);
        const std::string code = "00RM-K1SX-G00Q-0004-0005-046T";
        auto kept = kept_in(home);
        Running first(drawing_program, {"--size", "64x36", "--code", code, "--script", home.write("first", "report first.json\nwait 100000000\n")}, kept, home.path());
        for (int i = 0; i < 600 && !first.ended() && !std::filesystem::exists(home.file("first.json")); ++i) ::usleep(100'000);
        REQUIRE(std::filesystem::exists(home.file("first.json")));
        CHECK(report_in(home, "first.json")["read_only"] == false);
        const std::string kept_by_first = file_text(home.file("data/spurwright/work/present.json"));
        CHECK(kept_by_first.find(code) != std::string::npos);
        const Ran second = played(home, "report r.json\nkey Tab\nkey M\nkey Enter\nreport s.json\n", {"--code", code});
        CHECK(second.status == 0);
        const json before = report_in(home, "r.json"), after = report_in(home, "s.json");
        REQUIRE(before.is_object());
        CHECK(before["read_only"] == true);
        CHECK(before["message"].get<std::string>().find("window") != std::string::npos);
        CHECK(before["code"] == code);
        CHECK(after["read_only"] == true);
        CHECK(after["done"] == 1);  // it can be worked on
        CHECK_FALSE(first.ended());
        CHECK(file_text(home.file("data/spurwright/work/present.json")) == kept_by_first);
    }
    TEST_CASE("what is typed into Find after its key is found by, and Enter opens the next vine") {
        NEED_OFFSCREEN
        const Folder home;
        settings_of(home, settings_seen);
        const Ran ran = played(home, "key Escape\nkey Ctrl+F\ntype next vine\nreport a.json\nkey Enter\nframes 1\nreport b.json\n", {"--scene", "first"});
        CHECK(ran.status == 0);
        CHECK(ran.err.empty());
        const json a = report_in(home, "a.json"), b = report_in(home, "b.json");
        REQUIRE(b.is_object());
        const auto stands = [](const json& report, const std::string& name) {
            return std::any_of(report["widgets"].begin(), report["widgets"].end(), [&](const json& w) { return w["name"] == name; });
        };
        CHECK(stands(a, "find.next-vine"));
        CHECK_FALSE(stands(a, "find.next-step"));
        CHECK(b["code"] != a["code"]);
        CHECK(b["step"] == "look");
    }
    TEST_CASE("what keys walked to stands while the view turns under a resting pointer, and the cut is made there") {
        NEED_OFFSCREEN
        const Folder home;
        settings_of(home, settings_seen);
        const std::string code = "00RM-K1SX-G00Q-0004-0005-046T";
        const std::string walk = "key Tab\nsettle\nreport b.json\n";
        REQUIRE(played(home, "key F5\nsettle\n" + walk, {"--code", code}).status == 0);
        // Where other wood of the cane walked to will stand once the view has turned: there the pointer rests beforehand.
        const json turned = report_in(home, "b.json");
        json rests;
        const std::string cane = turned["chosen"];
        for (const json& part : turned["parts"]) {
            const std::string name = part["node"];
            if (name.starts_with(cane + ".") && name != cane + ".0" && part["y"] > 90 && part["y"] < 290) rests = part;
        }
        REQUIRE(rests.is_object());
        const std::string place = std::to_string(rests["x"].get<double>()) + " " + std::to_string(rests["y"].get<double>());
        const Ran ran = played(home, "key F5\nsettle\nmove " + place + "\nsettle\n" + walk + "key 1\nkey C\nreport c.json\n", {"--code", code});
        CHECK(ran.status == 0);
        const json b = report_in(home, "b.json"), c = report_in(home, "c.json");
        REQUIRE(c.is_object());
        CHECK(b["hover"].is_null());
        CHECK(b["view"] == "");  // the view did turn to what was walked to
        CHECK(c["done"] == 1);
        CHECK(c["plan"].get<std::string>().starts_with("cut " + cane + ".0"));
    }
    TEST_CASE("shrunk to nothing it waits, and goes on where it was") {
        NEED_OFFSCREEN
        const Folder home;
        settings_of(home, settings_seen);
        const Ran ran = played(home, "report a.json\nresize 0 0\nkey Tab\nwait 5\nresize 640 0\nwait 2\nresize 16 16\nwait 2\nresize 640 360\nreport b.json\n",
                               {"--code", "00RM-K1SX-G00Q-0004-0005-046T"});
        CHECK(ran.status == 0);
        CHECK(ran.err.empty());
        const json a = report_in(home, "a.json"), b = report_in(home, "b.json");
        REQUIRE(b.is_object());
        CHECK(a["screen"] == b["screen"]);
        CHECK(a["chosen"].is_null());
        CHECK(b["chosen"].is_string());  // what was typed meanwhile is not lost
        CHECK(b["parts"].size() > 5);
    }
}
