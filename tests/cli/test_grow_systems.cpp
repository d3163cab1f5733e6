// grow: other systems, trunks and varieties, and a whole row; how each system is judged.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/cli/answered.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

namespace {

// review, acceptable and ahead of a cordon, beside its best plan as `best` lists it.
void looks_back_on_a_cordon(const std::string& code, const json& best) {
    const std::string whole = best["plan"];
    const json same = answered({"review", code, "--plan", whole}, "verb-review");
    CHECK(same["mine_as_good"] == true);
    CHECK(same["charges"].empty());
    CHECK(same["best"]["choice"] == best["choice"]);
    for (const json& twin : same["twins"]) CHECK(twin["same"] == true);
    const json nothing = answered({"review", code, "--plan", ""}, "verb-review");
    CHECK(nothing["mine_as_good"] == false);
    double lost = 0;
    for (const json& step : nothing["steps"]) lost += step["lost"].get<double>();
    CHECK(lost == doctest::Approx(nothing["best_points"].get<double>() - nothing["points_before_caps"].get<double>()));
    // The near arm's first spur goes at its base: that act is charged with what it lost.
    const std::string name = best["choice"]["left_spurs"][0].get<std::string>(), axis = name.substr(0, name.find('x'));
    const json worse = answered({"review", code, "--plan", "cut " + axis + ".0+3.0 shears"}, "verb-review");
    REQUIRE(worse["charges"].size() == 1);
    CHECK(worse["charges"][0]["missed"] == axis);
    CHECK(worse["charges"][0]["lost"].get<double>() > 0);
    CHECK(worse["charges"][0]["sentence"].get<std::string>().find("the best spur still there") != std::string::npos);
    const json good = answered({"acceptable", code, "--plan", whole}, "verb-acceptable");
    CHECK(good["mine"]["as_good"] == true);
    CHECK(good["best_points"] == best["points"]);
    CHECK(good["count"].get<std::int64_t>() >= 1);
    CHECK(good["groups"][0]["mine"] == true);
    CHECK(good["groups"][0]["best"] == best["choice"]);
    const json ahead = answered({"ahead", code, "--plan", "", "--seasons", "2"}, "verb-ahead");
    REQUIRE(ahead["plans"].size() == 2);
    const json &left = ahead["plans"][0]["winters"][0], &cut = ahead["plans"][1]["winters"][0];
    CHECK(left["shoots"]["median"] > cut["shoots"]["median"]);  // more nodes left, more shoots [epee-2022]
    CHECK(cut["creep_mm"].is_null());
    CHECK(cut["good_canes"]["median"].get<double>() > 0);
    CHECK(ahead["plans"][1]["winters"][1]["climb_mm"].is_object());
    for (const char* language : {"en", "es", "es-ES", "es-CL"})
        for (const std::vector<std::string>& verb :
             {std::vector<std::string>{"review", code, "--plan", "cut " + axis + ".0+3.0 shears"}, {"acceptable", code, "--plan", ""}}) {
            std::vector<std::string> asked = verb;
            asked.insert(asked.end(), {"--language", language});
            const Ran ran = run_program(asked);
            CHECK(ran.status == 0);
            CHECK(ran.out.find('[') == std::string::npos);
            CHECK(ran.out.find('{') == std::string::npos);
        }
    const Folder folder;
    answered({"review", code, "--plan", "", "--html", folder.file("page.html")}, "verb-review");
}

} // namespace

TEST_SUITE("cli/grow systems") {
    TEST_CASE("every system is grown, shown by its code, judged, looked back on and grown ahead; a plan for another is refused") {
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
                looks_back_on_a_cordon(its_code, plan);
                const json pass = answered({"best", its_code, "--pass", "first"}, "verb-best");
                CHECK(pass["plans"][0]["points"] == 100.0);
                const json passed = answered({"judge", its_code, "--pass", "first", "--plan", pass["plans"][0]["plan"]}, "verb-judge");
                CHECK(passed["points"] == 100.0);
                CHECK(refused({"best", its_code, "--pass", "second"}).find("--pass: ") != std::string::npos);
                const std::string name = plan["choice"]["left_spurs"][0].get<std::string>();
                const std::string lays = "lay " + name.substr(0, name.find('x')) + " left wraps 1";
                for (const std::vector<std::string>& verb :
                     {std::vector<std::string>{"judge", its_code, "--plan", lays}, {"review", its_code, "--plan", lays},
                      {"acceptable", its_code, "--plan", lays}, {"ahead", its_code, "--plan", lays, "--seasons", "1"},
                      {"ahead", its_code, "--plan", "", "--against", lays, "--seasons", "1"}})
                    CHECK(refused(verb).find("the plan is for another system") != std::string::npos);
                CHECK(refused({"ahead", its_code, "--plan", "", "--seasons", "1", "--kickers-until", "100"}).find("leave --kickers-until out") != std::string::npos);
                const json top = answered({"best", its_code, "--top", "3"}, "verb-best");
                REQUIRE(top["plans"].size() == 3);
                CHECK(top["plans"][0]["plan"] == plan["plan"]);
                CHECK(top["plans"][2]["points"] <= top["plans"][1]["points"]);
                const std::string whole = plan["plan"], half = whole.substr(0, whole.find("; cut"));
                const json rest = answered({"best", its_code, "--after", half}, "verb-best");
                CHECK(rest["after"] == half);
                CHECK(rest["plans"][0]["points"] == plan["points"]);
                CHECK(half + "; " + rest["plans"][0]["rest"].get<std::string>() == whole);
                CHECK(answered({"best", its_code, "--after", whole}, "verb-best")["plans"][0]["rest"] == "");
                CHECK(refused({"best", its_code, "--after", lays}).find("the plan is for another system") != std::string::npos);
            }
        CHECK(refused({"grow", "--system", "head-canes"}).find("--system: ") != std::string::npos);
        CHECK(refused({"grow", "--trunks", "3"}).find("--trunks: ") != std::string::npos);
        CHECK(answered({"grow", "--variety", "concord", "--seed", "1"}, "verb-grow")["site"]["variety"] == "concord");
    }
    TEST_CASE("own varieties and sites: written from a shipped one, changed, grown and looked ahead with; no code names such a vine") {
        const Folder folder;
        const json values = answered({"variety", "concord", "-o", folder.file("v.json")}, "verb-variety")["values"];
        CHECK(values["name"] == "own-concord");
        CHECK(answered({"variety", folder.file("v.json")}, "verb-variety")["values"] == values);
        const json site = answered({"site", "warm", "-o", folder.file("s.json")}, "verb-site")["values"];
        CHECK(site["climate"]["mean_c"] == 15.0);
        const json own = answered({"grow", "--variety", folder.file("v.json"), "--seed", "7", "-o", folder.file("vine.json")}, "verb-grow");
        CHECK(own["code"].is_null());
        CHECK(own["site"]["variety"] == "own-concord");
        CHECK(answered({"show", folder.file("vine.json")}, "verb-grow")["hash"] == own["hash"]);
        const json shipped = answered({"grow", "--variety", "concord", "--seed", "7"}, "verb-grow");
        CHECK(own["candidates"] == shipped["candidates"]); // the same values, the same wood
        const std::string spaced = folder.write("spaced.json", R"({"kind": "spurwright-site", "version": 1, "name": "our-slope", "base": "warm",
            "climate": {"mean_c": 16}, "vineyard": {"spacing": 1500, "vigour": "low"}})");
        const json there = answered({"grow", "--site", spaced, "--seed", "7"}, "verb-grow");
        CHECK(there["code"] == answered({"grow", "--spacing", "1.5m", "--vigour", "low", "--seed", "7"}, "verb-grow")["code"]);
        CHECK(answered({"grow", "--site", spaced, "--spacing", "1.8m", "--vigour", "moderate", "--seed", "7"}, "verb-grow")["code"] ==
              answered({"grow", "--seed", "7"}, "verb-grow")["code"]); // what is said after counts
        const json ahead = answered({"ahead", folder.file("vine.json"), "--plan", "", "--seasons", "1", "--variety", folder.file("v.json"), "--climate", spaced}, "verb-ahead");
        CHECK(ahead["variety"] == "own-concord");
        CHECK(ahead["climate"] == "our-slope");
        const json named = answered({"ahead", folder.file("vine.json"), "--plan", "", "--seasons", "1", "--variety", "concord", "--climate", "warm"}, "verb-ahead");
        CHECK(named["plans"] != ahead["plans"]); // a warmer place
        answered({"ahead", folder.file("vine.json"), "--plan", "", "--seasons", "1", "--climate", folder.file("s.json")}, "verb-ahead");
    }
    TEST_CASE("own varieties and sites that cannot be used are refused by key and line, and names that are none") {
        const Folder folder;
        const std::string wrong = folder.write("v.json", "{\"kind\": \"spurwright-variety\", \"version\": 1, \"name\": \"a\", \"base\": \"plain\",\n\"bunch_mass_g\": 900}");
        CHECK(refused({"grow", "--variety", wrong}).find(wrong + ":2:17: \"bunch_mass_g\" must lie between 40 and 250; 900 does not.") == 0);
        CHECK(refused({"variety", wrong}).find(wrong + ":2") == 0);
        const std::string far = folder.write("s.json", "{\"kind\": \"spurwright-site\", \"version\": 1, \"name\": \"a\", \"base\": \"warm\",\n\"vineyard\": {\"wire\": 2000}}");
        CHECK(refused({"grow", "--site", far}).find("\"wire\" must lie between 600 and 1400 mm; 2000 does not.") != std::string::npos);
        CHECK(refused({"ahead", code, "--plan", "", "--seasons", "1", "--climate", far}).find(far + ":2") == 0);
        CHECK(refused({"site", "moon"}).find("The site moon is not known; known are: inland-continental") != std::string::npos);
        CHECK(refused({"variety", "moon"}).find("The variety moon is not known") != std::string::npos);
        CHECK(refused({"variety", folder.file("none.json")}).find(folder.file("none.json")) == 0);
        CHECK(refused({"site"}) == "site: NAME|FILE is missing.");
        CHECK(refused({"variety", "plain", "-o", folder.path()}).find(folder.path()) == 0);
    }
    TEST_CASE("a plan that lays two canes on a vine of a single one is refused; one laid after the first snapped is not") {
        const std::string its_code = answered({"grow", "--system", "one-cane", "--seed", "4"}, "verb-grow")["code"];
        const json plan = answered({"best", its_code}, "verb-best")["plans"][0]["choice"];
        const json shown = answered({"show", its_code}, "verb-grow");
        const std::string kept = plan["left_cane"].is_null() ? plan["right_cane"] : plan["left_cane"];
        const std::string first = kept.substr(0, kept.find('.')), way = plan["left_cane"].is_null() ? "right" : "left";
        const std::string other_way = way == "left" ? "right" : "left";
        std::string both; // with the first cane that does not snap on its way
        for (const json& candidate : shown["candidates"]) {
            if (!both.empty() || candidate["id"] == first || candidate["wood_age"] != 1) continue;
            const std::string two = "lay " + first + " " + way + " wraps 1; lay " + candidate["id"].get<std::string>() + " " + other_way + " wraps 1";
            if (run_program({"judge", its_code, "--plan", two}).status == 2) both = two;
        }
        REQUIRE_FALSE(both.empty());
        for (const std::vector<std::string>& verb :
             {std::vector<std::string>{"judge", its_code, "--plan", both}, {"review", its_code, "--plan", both},
              {"acceptable", its_code, "--plan", both}, {"ahead", its_code, "--plan", both, "--seasons", "1"}})
            CHECK(refused(verb).find("laid as a second cane") != std::string::npos);
        // The first comes off again: then one cane lies.
        answered({"judge", its_code, "--plan", both + "; cut " + first + ".0+3.0 shears"}, "verb-judge");
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
