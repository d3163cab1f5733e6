// The book of reference vines as a person runs its verbs, and the invented block.
#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/cli/shed.h"
#include "tests/support/statistics.h"

using namespace spurwright::test;
using nlohmann::json;

TEST_SUITE("records/book") {
    TEST_CASE("a block, its weighings, the table and the map; a look alone makes nothing") {
        const Shed shed;
        CHECK(shed.object({"book", "list"}, "verb-book-list")["blocks"].empty());
        CHECK(!std::filesystem::exists(shed.folder.file("data")));
        CHECK(shed.object({"book", "block", "north", "--spacing", "6ft", "--formula", "20+10"}, "verb-book-block")["spacing_mm"] == 1828.8);
        const std::string file = shed.folder.write("w.csv", "block,row,tag,place,winter,weight,buds,crop,latitude,longitude\nnorth,1,a,1,2024,1.5 lb,24,9 lb,42.5,-8.25\nnorth,1,b,2,2024,2 lb,24,,,\n"
                                                            "north,1,a,1,2025,1.6 lb,,,42.5,-8.25\nnorth,1,c,3,2025,0 lb,,,,\n");
        const json dry = shed.object({"book", "import", file, "--dry-run"}, "verb-book-import", 2);
        CHECK(dry["written"] == false);
        CHECK(shed.object({"book", "list"}, "verb-book-list")["blocks"][0]["weighings"] == 0);
        CHECK(shed.object({"book", "import", file, "--all-or-none"}, "verb-book-import", 2)["written"] == false);
        CHECK(shed.object({"book", "list"}, "verb-book-list")["blocks"][0]["vines"] == 0);
        const json done = shed.object({"book", "import", file}, "verb-book-import", 2);
        CHECK(done["new"] == 3);
        CHECK(done["refused"][0]["line"] == 5);
        CHECK(done["refused"][0]["column"] == "weight");
        const json block = shed.object({"book", "list"}, "verb-book-list")["blocks"][0];
        CHECK(block["vines"] == 2);
        CHECK(block["weighings"] == 3);
        CHECK(block["last_winter"] == 2025);
        const std::string csv = shed.folder.file("out.csv"), map = shed.folder.file("out.geojson");
        CHECK(shed.object({"book", "export", "-o", csv}, "verb-book-export")["written"] == 3);
        CHECK(shed.object({"book", "import", csv}, "verb-book-import")["same"] == 3);
        const json mapped = shed.object({"book", "export", "-o", map}, "verb-book-export");
        CHECK(mapped["written"] == 1);
        CHECK(mapped["left_out"] == 1);
        CHECK(schema_fault("book-map-1", file_text(map)) == "");
        CHECK(json::parse(file_text(map))["features"][0]["geometry"]["coordinates"] == json::parse("[-8.25, 42.5]"));
        const json vines = shed.object({"book", "compare", "north", "--vines"}, "verb-book-compare")["by_vine"];
        CHECK(vines[0]["winters"][0]["typed"] == "1.5 lb");
    }
    TEST_CASE("undo takes back an import whole, and the history keeps both") {
        const Shed shed;
        shed.object({"book", "block", "north", "--spacing", "1.8m"}, "verb-book-block");
        const std::string first = shed.folder.write("1.csv", "block,tag,winter,weight_kg\nnorth,a,2024,0.8\nnorth,b,2024,0.9\n");
        const std::string second = shed.folder.write("2.csv", "block,tag,winter,weight_kg\nnorth,a,2024,0.7\nnorth,c,2024,1.0\n");
        shed.object({"book", "import", first}, "verb-book-import");
        const std::string before = shed.folder.file("before.csv"), after = shed.folder.file("after.csv");
        shed.run({"book", "export", "-o", before});
        CHECK(shed.object({"book", "import", second}, "verb-book-import")["changed"] == 1);
        CHECK(shed.object({"book", "undo"}, "verb-book-undo")["changes"] == 3); // a vine, its weighing, a changed one
        shed.run({"book", "export", "-o", after});
        CHECK(file_text(before) == file_text(after));
        shed.object({"book", "undo"}, "verb-book-undo");
        shed.object({"book", "undo"}, "verb-book-undo");
        CHECK(shed.object({"book", "list"}, "verb-book-list")["blocks"].empty());
        CHECK(shed.refused({"book", "undo"}).find("Nothing was done") != std::string::npos);
        const json acts = shed.object({"book", "history"}, "verb-book-history")["acts"];
        CHECK(acts.size() == 6);
        CHECK(acts[0]["undoes"] == 1);
    }
    TEST_CASE("compare: paired change, its interval and its test, as computed by hand") {
        const Shed shed;
        shed.object({"book", "block", "north", "--spacing", "1.8m"}, "verb-book-block");
        // Student 1908's ten sleepers, moved up by 3 and read as kilograms: the paired test does not know.
        const double before[] = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}, after[] = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
        std::string text = "block,tag,winter,weight_kg,buds\n";
        for (int i = 0; i < 10; ++i) {
            text += "north," + std::to_string(i) + ",2024," + std::to_string(before[i] + 3) + ",20\n";
            text += "north," + std::to_string(i) + ",2025," + std::to_string(after[i] + 3) + ",20\n";
        }
        shed.object({"book", "import", shed.folder.write("s.csv", text)}, "verb-book-import");
        const json compared = shed.object({"book", "compare", "north"}, "verb-book-compare");
        const json change = compared["changes"][0];
        CHECK(change["pairs"] == 10);
        CHECK(change["mean_kg"].get<double>() == doctest::Approx(1.58));
        CHECK(change["t"].get<double>() == doctest::Approx(4.0621).epsilon(1e-5));
        CHECK(change["p"].get<double>() == doctest::Approx(0.002833).epsilon(1e-3));
        CHECK(change["low_kg"].get<double>() == doctest::Approx(0.7001142).epsilon(1e-6));
        CHECK(change["high_kg"].get<double>() == doctest::Approx(2.4598858).epsilon(1e-6));
        CHECK(compared["winters"][0]["kg"]["median"] == 3.35);
        CHECK(compared["winters"][0]["class_cool"] == "excessive");
        CHECK(compared["history"].is_null());
        CHECK(compared["next_by_buds"].is_null()); // all kept 20: no line through one place
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            const Ran said = shed.run({"book", "compare", "north", "--vines", "--language", language});
            CHECK(said.status == 0);
            CHECK(said.out.find('[') == std::string::npos);
        }
        CHECK(shed.object({"book", "compare", "north", "--from", "2025"}, "verb-book-compare")["changes"].empty());
    }
    TEST_CASE("suggest: by weight, by space, the smaller [smith-2023 for 20+20], block and option") {
        const Shed shed;
        shed.object({"book", "block", "north", "--spacing", "1.8m"}, "verb-book-block");
        shed.object({"book", "import", shed.folder.write("s.csv", "block,tag,winter,weight_lb\nnorth,a,2025,1.5\nnorth,b,2025,0.9\nnorth,c,2024,2\n")}, "verb-book-import");
        const json suggested = shed.object({"book", "suggest", "north"}, "verb-book-suggest");
        REQUIRE(suggested["vines"].size() == 2); // c was not weighed in the last winter
        CHECK(suggested["vines"][0]["by_weight"] == 30);
        CHECK(suggested["vines"][0]["smaller"] == 30);
        CHECK(suggested["vines"][0]["by_space"] == json::parse("[22, 31]"));
        CHECK(suggested["vines"][1]["small_vine"] == true);
        CHECK(suggested["source"] == "smith-2023");
        CHECK(suggested["history_years"].is_null());
        CHECK(shed.object({"book", "suggest", "north", "--formula", "60+10"}, "verb-book-suggest")["vines"][0]["smaller"] == 31);
        shed.object({"book", "block", "north", "--formula", "30+10"}, "verb-book-block");
        CHECK(shed.object({"book", "suggest", "north"}, "verb-book-suggest")["formula"] == "30+10");
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) CHECK(shed.run({"book", "suggest", "north", "--language", language}).out.find('[') == std::string::npos);
        // A practice vine pruned to a reference vine's last weight.
        const std::string house = shed.folder.file("vine.json");
        const json one = shed.object({"book", "suggest", "north", "--tag", "a", "--house", house}, "verb-book-suggest");
        CHECK(one["house"] == house);
        REQUIRE(one["vines"].size() == 1);
        CHECK(schema_fault("house-rules-1", file_text(house)) == "");
        const int asked = one["vines"][0]["smaller"];
        const json judged = shed.object({"judge", "00RM-K1SX-G00Q-0004-0005-046T", "--plan", "", "--rules", house}, "verb-judge");
        CHECK(judged.dump().find("\"reference-vine\"") != std::string::npos);
        CHECK(json::parse(file_text(house))["rules"]["bud-load"]["target"] == asked);
        shed.object({"rules", "--check", house}, "verb-rules");
        CHECK(shed.refused({"book", "suggest", "north", "--tag", "c"}).find("was weighed in winter 2025") != std::string::npos);
    }
    TEST_CASE("words that are wrong") {
        const Shed shed;
        CHECK(shed.refused({"book", "compare", "north"}).find("which is empty") != std::string::npos);
        CHECK(shed.refused({"book", "block", "north"}).find("--spacing L is missing") != std::string::npos);
        CHECK(shed.refused({"book", "block", "=1+1", "--spacing", "1.8m"}).find("does not begin like a formula") != std::string::npos);
        CHECK(shed.refused({"book", "block", "north", "--spacing", "1.8"}).find("no unit") != std::string::npos);
        CHECK(shed.refused({"book", "block", "north", "--spacing", "80m"}).find("does not lie between") != std::string::npos);
        CHECK(!std::filesystem::exists(shed.folder.file("data")));
        shed.object({"book", "block", "north", "--spacing", "1.8m"}, "verb-book-block");
        CHECK(shed.refused({"book", "compare", "nort"}).find("did you mean north") != std::string::npos);
        CHECK(shed.refused({"book", "compare", "north", "--row", "9"}).find("No vine of the block") != std::string::npos);
        CHECK(shed.refused({"book", "compare", "north", "--within", "0"}).find("--within") != std::string::npos);
        CHECK(shed.refused({"book", "compare", "north", "--confidence", "100"}).find("--confidence") != std::string::npos);
        CHECK(shed.refused({"book", "suggest", "north"}).find("was weighed yet") != std::string::npos);
        CHECK(shed.refused({"book", "export", "-o", "x.txt"}).find(".geojson") != std::string::npos);
        CHECK(shed.refused({"book"}).find("book import") != std::string::npos);
        CHECK(shed.run({"book", "--help"}).out.find("book suggest") != std::string::npos);
    }
    TEST_CASE("demo block: 60 vines over 8 winters, said to be invented everywhere, by the way of every file; the same again changes nothing") {
        const Shed shed;
        const std::string table = shed.folder.file("demo.csv");
        const json demo = shed.object({"demo-block", "-o", table}, "verb-demo-block");
        CHECK(demo["new"] == 480);
        CHECK(demo["refused"] == 0);
        const std::string block = demo["block"];
        CHECK(shed.object({"demo-block"}, "verb-demo-block")["same"] == 480);
        CHECK(shed.object({"book", "import", table}, "verb-book-import")["same"] == 480);
        CHECK(file_text(table).find("invented") != std::string::npos);
        CHECK(shed.run({"book", "compare", block}).out.find("Of 13 such comparisons about 0.65 would") != std::string::npos); // seven winters on, three rows, three pairs of them
        for (const char* verb : {"compare", "suggest"}) CHECK(shed.run({"book", verb, block}).out.find("Invented: ") != std::string::npos);
        // What the rows tell: many buds wear a vine down, few let it grow strong.
        Sample last;
        for (const char* row : {"1", "2", "3"}) {
            const json compared = shed.object({"book", "compare", block, "--row", row}, "verb-book-compare");
            CHECK(compared["vines"] == 20);
            CHECK(compared["winters"].size() == 8);
            CHECK(compared["winters"][7]["kg"]["n"] == 20);
            last.push_back(compared["winters"][7]["kg"]["mean"]);
        }
        MESSAGE("mean kg in the last winter: by weight ", last[0], ", few buds ", last[1], ", many buds ", last[2]);
        CHECK(last[1] > last[2]);
        CHECK(last[0] > last[2]);
        // But row 3 stood weaker from the start: what its pruning did is told by how its vines changed beside others'.
        const json whole = shed.object({"book", "compare", block}, "verb-book-compare");
        REQUIRE(whole["row_differences"].size() == 3);
        for (const json& pair : whole["row_differences"]) {
            const auto row = [&](const std::string& name) { return whole["rows"][std::stoul(name) - 1]["mean_kg"].get<double>(); };
            CHECK(std::abs(pair["mean_kg"].get<double>() - (row(pair["second"]) - row(pair["first"]))) < 1e-5);
            CHECK(pair["low_kg"] < pair["mean_kg"]);
            CHECK(pair["mean_kg"] < pair["high_kg"]);
        }
        for (const json& winter : whole["winters"]) CHECK(winter["vines_if_known"].get<double>() < winter["vines_for_precision"].get<double>());
        // The coming winter's number, and with what doubt.
        const json next = shed.object({"book", "suggest", block}, "verb-book-suggest");
        CHECK(next["if_light"] <= next["middle"]["smaller"]);
        CHECK(next["if_heavy"] >= next["middle"]["smaller"]);
        CHECK(next["since"]["pairs"] == 60);
        CHECK(next["since"]["mean_kg"] == whole["changes"].back()["mean_kg"]);
        CHECK(next["middle_kept"] > 10);
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) CHECK(shed.run({"book", "suggest", block, "--language", language}).out.find('[') == std::string::npos);
        CHECK(shed.object({"book", "compare", block}, "verb-book-compare")["history"]["years"] > 6);
    }
}
