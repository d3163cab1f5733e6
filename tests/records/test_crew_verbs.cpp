// crew import, list, export and forget as a person runs them.
#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "scenarios/records/events.h"
#include "tests/cli/shed.h"

using namespace spurwright::test;
using nlohmann::json;

TEST_SUITE("records/crew") {
    TEST_CASE("a roster goes in, is listed and exported; asked about nothing, no folder is made") {
        const Shed shed;
        CHECK(shed.object({"crew", "list"}, "verb-crew-list")["people"].empty());
        CHECK(!std::filesystem::exists(shed.folder.file("data")));
        const std::string file = shed.folder.write("crew ñ.csv", "number,name,language,crew,start\n7,Ana,es,north,2026-01-05\n8,Luz,es-CL,,\n");
        const json dry = shed.object({"crew", "import", file, "--dry-run"}, "verb-crew-import");
        CHECK(dry["written"] == false);
        CHECK(dry["new"].size() == 2);
        CHECK(!std::filesystem::exists(shed.folder.file("data")));
        CHECK(shed.object({"crew", "import", file}, "verb-crew-import")["new"] == json::parse(R"([{"line":2,"number":7},{"line":3,"number":8}])"));
        CHECK(shed.object({"crew", "import", file}, "verb-crew-import")["same"].size() == 2);
        const json people = shed.object({"crew", "list"}, "verb-crew-list")["people"];
        REQUIRE(people.size() == 2);
        CHECK(people[0]["name"] == "Ana");
        CHECK(people[1]["start"].is_null());
        const std::string csv = shed.folder.file("out.csv"), exported = shed.folder.file("out.json");
        CHECK(shed.object({"crew", "export", "-o", csv}, "verb-crew-export")["written"] == 2);
        CHECK(file_text(csv) == "number,name,language,crew,start\r\n7,Ana,es,north,2026-01-05\r\n8,Luz,es-CL,,\r\n");
        shed.object({"crew", "export", "-o", exported}, "verb-crew-export");
        CHECK(schema_fault("verb-crew-list", file_text(exported)) == "");
        for (const char* language : {"en", "es", "es-CL"}) {
            const Ran text = shed.run({"crew", "list", "--language", language});
            CHECK(text.out.find("Luz") != std::string::npos);
            CHECK(text.out.find('[') == std::string::npos);
        }
    }
    TEST_CASE("good rows go in, refused ones are named and written out to be mended; exit 2; --all-or-none takes nothing") {
        const Shed shed;
        const std::string file = shed.folder.write("crew.csv", "number,name,language\n7,Ana,es\n8,Luz,sp\n"), mend = shed.folder.file("mend.csv");
        const json none = shed.object({"crew", "import", file, "--all-or-none"}, "verb-crew-import", 2);
        CHECK(none["written"] == false);
        CHECK(shed.object({"crew", "list"}, "verb-crew-list")["people"].empty());
        const json some = shed.object({"crew", "import", file, "--refused", mend}, "verb-crew-import", 2);
        CHECK(some["written"] == true);
        REQUIRE(some["refused"].size() == 1);
        CHECK(some["refused"][0]["line"] == 3);
        CHECK(some["refused"][0]["column"] == "language");
        CHECK(some["refused"][0]["reason"] == "The language \"sp\" is unknown; did you mean es?");
        CHECK(file_text(mend) == "number,name,language\r\n8,Luz,sp\r\n");
        CHECK(shed.object({"crew", "list"}, "verb-crew-list")["people"].size() == 1);
        const Ran text = shed.run({"crew", "import", file, "--language", "es"});
        CHECK(text.status == 2);
        CHECK(text.out.find("crew.csv, línea 3, columna language: ") != std::string::npos);
    }
    TEST_CASE("forget takes somebody out; words that are wrong are refused in one sentence") {
        const Shed shed;
        const std::string file = shed.folder.write("crew.csv", "number,language\n7,es\n8,es\n");
        shed.object({"crew", "import", file}, "verb-crew-import");
        CHECK(shed.object({"crew", "forget", "7"}, "verb-crew-forget")["removed"] == 0);
        CHECK(shed.object({"crew", "list"}, "verb-crew-list")["people"].size() == 1);
        CHECK(shed.run({"crew", "forget", "7"}).err == "spurwright: crew forget: Nobody has the number 7.\n");
        CHECK(shed.run({"crew", "forget", "x"}).status == 2);
        CHECK(shed.run({"crew"}).err.starts_with("spurwright: crew: Say which: crew import, crew list, crew export, crew show, crew forget, "));
        CHECK(shed.run({"crew", "imprt"}).err.find("There is no \"imprt\" here; there are crew import") != std::string::npos);
        CHECK(shed.run({"crew", "import"}).err == "spurwright: crew import: FILE.csv is missing.\n");
        CHECK(shed.run({"crew", "import", shed.folder.file("none.csv")}).err.find("There is no such file.") != std::string::npos);
        CHECK(shed.run({"crew", "export", "-o", "x.txt"}).status == 2);
        CHECK(shed.run({"crew", "--help"}).out.find("crew forget") != std::string::npos);
        CHECK(shed.run({"crew", "import", "--help"}).out.find("--all-or-none") != std::string::npos);
    }
    TEST_CASE("everything held about a number: the person and each event, as one file") {
        const Shed shed;
        shed.object({"crew", "import", shed.folder.write("crew.csv", "number,name,language\n7,Ana,es\n8,Luz,es\n")}, "verb-crew-import");
        {
            auto store = spurwright::records::Store::open(shed.folder.file("data/spurwright/store.sqlite"));
            REQUIRE(store);
            REQUIRE(spurwright::records::add_event(*store, {0, "answer", 1, "2026-01-31T12:00:00Z", 7, R"({"plan":"mark a4 left","marks_tenths":875})", std::nullopt}));
            REQUIRE(spurwright::records::add_event(*store, {0, "answer", 1, "2026-01-31T12:00:00Z", 8, R"({"plan":"other"})", std::nullopt}));
        }
        const std::string file = shed.folder.file("about.json");
        const json about = shed.object({"crew", "show", "0007", "-o", file}, "verb-crew-show");
        CHECK(about["person"]["name"] == "Ana");
        REQUIRE(about["events"].size() == 1);
        CHECK(about["events"][0]["body"]["marks_tenths"] == 875);
        CHECK(json::parse(file_text(file)) == about);
        CHECK(shed.run({"crew", "show", "8", "--language", "es"}).out.find("other") != std::string::npos);
        shed.object({"crew", "forget", "7"}, "verb-crew-forget");
        CHECK(shed.run({"crew", "show", "7"}).err == "spurwright: crew show: Nobody has the number 7.\n");
    }
    TEST_CASE("a store that cannot be written, is another file or is newer: one sentence, exit 2") {
        const Shed shed;
        const std::string file = shed.folder.write("crew.csv", "number,language\n7,es\n");
        const Ran nowhere = run_program_of(SPURWRIGHT_PROGRAM, {"crew", "import", file}, {"XDG_DATA_HOME=/proc/nowhere"});
        CHECK(nowhere.status == 2);
        CHECK(nowhere.out.empty());
        CHECK(nowhere.err.starts_with("spurwright: /proc"));
        const Ran homeless = run_program_of(SPURWRIGHT_PROGRAM, {"crew", "import", file}, {"XDG_DATA_HOME", "HOME"});
        CHECK(homeless.status == 2);
        std::filesystem::create_directories(shed.folder.file("data/spurwright"));
        shed.folder.write("data/spurwright/store.sqlite", "no records");
        const Ran other = shed.run({"crew", "list", "--json"});
        CHECK(other.status == 2);
        CHECK(schema_fault("error", other.err) == "");
    }
}
