// grow: other systems, trunks and varieties, and a whole row; how each system is judged.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/cli/answered.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

TEST_SUITE("cli/grow systems") {
    TEST_CASE("every system is grown, shown by its code and judged; what is not worked out for cordons yet says so in one sentence") {
        for (const char* system : {"two-cane", "one-cane", "cordon"})
            for (const char* trunks : {"1", "2"}) {
                const json grown =
                    answered({"grow", "--system", system, "--trunks", trunks, "--seed", "4"}, "verb-grow");
                CHECK(grown["site"]["system"] == system);
                CHECK(grown["site"]["trunks"] == std::stoi(trunks));
                const std::string its_code = grown["code"];
                CHECK(answered({"show", its_code}, "verb-grow") == grown);
                const Folder folder; // through a vine file and back
                answered({"grow", "--system", system, "--trunks", trunks, "--seed", "4", "-o", folder.file("v.json")},
                          "verb-grow");
                CHECK(answered({"show", folder.file("v.json")}, "verb-grow")["hash"] == grown["hash"]);
                if (system != std::string("cordon")) {
                    CHECK(answered({"best", its_code}, "verb-best")["plans"].size() == 1);
                    answered({"judge", its_code, "--plan", ""}, "verb-judge");
                    CHECK(refused({"best", its_code, "--pass", "first"}).find("is for cordons") != std::string::npos);
                    answered({"ahead", its_code, "--plan", "", "--seasons", "1"}, "verb-ahead");
                    continue;
                }
                const json best = answered({"best", its_code}, "verb-best");
                const json& plan = best["plans"][0];
                CHECK(plan["choice"]["left_spurs"].size() + plan["choice"]["right_spurs"].size() > 4);
                const json judged = answered({"judge", its_code, "--plan", plan["plan"]}, "verb-judge");
                CHECK(judged["points"] == plan["points"]);
                CHECK(judged["best_points"] == plan["points"]);
                CHECK(judged["rule_set"] == "spur-cordon");
                CHECK(judged["plans_better"] == 0);
                CHECK(judged["plans_counted"] == best["plans_counted"]);
                for (const std::vector<std::string>& verb :
                     {std::vector<std::string>{"acceptable", its_code}, {"review", its_code, "--plan", ""}, {"ahead", its_code, "--plan", "", "--seasons", "1"}})
                    CHECK(refused(verb).find("Cordons have judge and best") != std::string::npos);
                const json pass = answered({"best", its_code, "--pass", "first"}, "verb-best");
                CHECK(pass["plans"][0]["points"] == 100.0);
                const json passed = answered({"judge", its_code, "--pass", "first", "--plan", pass["plans"][0]["plan"]}, "verb-judge");
                CHECK(passed["points"] == 100.0);
                CHECK(refused({"best", its_code, "--pass", "second"}).find("--pass: ") != std::string::npos);
                const std::string name = plan["choice"]["left_spurs"][0].get<std::string>();
                const std::string lays = "lay " + name.substr(0, name.find('x')) + " left wraps 1";
                CHECK(refused({"judge", its_code, "--plan", lays}).find("the plan is for another system") != std::string::npos);
                CHECK(refused({"best", its_code, "--top", "2"}).find("leave --top out") != std::string::npos);
            }
        CHECK(refused({"grow", "--system", "head-canes"}).find("--system: ") != std::string::npos);
        CHECK(refused({"grow", "--trunks", "3"}).find("--trunks: ") != std::string::npos);
        CHECK(answered({"grow", "--variety", "concord", "--seed", "1"}, "verb-grow")["site"]["variety"] == "concord");
    }
    TEST_CASE("a row: a place a line, a vine file for each that stands, the same row for the same seed") {
        const Folder folder;
        const std::string rows = folder.file("row");
        const json row = answered({"grow", "--row", "60", "--seed", "3", "-o", rows}, "verb-grow-row");
        REQUIRE(row["places"].size() == 60);
        int files = 0, missing = 0;
        for (const json& place : row["places"]) {
            if (place["state"] == "missing") {
                ++missing;
                CHECK(place["file"].is_null());
                CHECK(place["hash"].is_null());
                continue;
            }
            ++files;
            if (place["place"].get<int>() % 10 != 0) continue;
            const json shown = answered({"show", place["file"]}, "verb-grow");
            CHECK(shown["hash"] == place["hash"]);
            CHECK(shown["code"].is_null());
        }
        CHECK(files + missing == 60);
        CHECK(row["places"][0]["left"] == "end-post");
        CHECK(row["places"][59]["right"] == "end-post");
        json listed = answered({"grow", "--row", "60", "--seed", "3"}, "verb-grow-row");
        CHECK(listed["folder"].is_null());
        for (std::size_t i = 0; i < 60; ++i) CHECK(listed["places"][i]["hash"] == row["places"][i]["hash"]);
        for (const char* language : {"en", "es", "es-ES", "es-CL"})
            CHECK(run_program({"grow", "--row", "5", "--seed", "3", "--language", language}).out.find('[') ==
                  std::string::npos);
    }
    TEST_CASE("a row refuses no places, too many, and a file where a folder is asked") {
        const Folder folder;
        CHECK(refused({"grow", "--row", "0"}).find("--row: 0 does not lie between 1 and 1000") != std::string::npos);
        CHECK(refused({"grow", "--row", "1001"}).find("--row: ") != std::string::npos);
        answered({"grow", "--seed", "1", "-o", folder.file("v.json")}, "verb-grow");
        CHECK(refused({"grow", "--row", "2", "-o", folder.file("v.json")}).find("No folder can be made here.") !=
              std::string::npos);
    }
    TEST_CASE("best says how hard the vine is to choose on") {
        const json best = answered({"best", "00RM-K1SX-G00Q-0004-0005-046T"}, "verb-best");
        CHECK(best["difficulty"]["plans_as_good"] >= 1);
        CHECK(best["difficulty"]["left"]["good"].get<int>() >= 1);
        CHECK(best["difficulty"]["left"]["good"] <= best["difficulty"]["left"]["choices"]);
    }
}
