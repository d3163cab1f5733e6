// ahead: what a plan brings, beside the best one; its refusals.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/cli/answered.h"

using namespace spurwright::test;
using nlohmann::json;

namespace {

json ahead_of(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"ahead", code});
    return answered(std::move(arguments), "verb-ahead");
}

std::string best_plan() { return json::parse(run_program({"best", code, "--json"}).out)["plans"][0]["plan"]; }

// Where the refusal says that it lies.
std::string refused_at(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"ahead", code});
    const std::string said = refused(std::move(arguments));
    return said.substr(0, said.find(": "));
}

// So many days from 7 September 2018 on.
std::string warm_days(int days) {
    std::string text = "date,tmin_c,tmax_c\n";
    const int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int year = 2018, month = 9, day = 7;
    for (int i = 0; i < days; ++i) {
        char line[64];
        std::snprintf(line, sizeof line, "%04d-%02d-%02d,%d,%d\n", year, month, day, month > 4 && month < 10 ? 12 : 2,
                      month > 3 && month < 11 ? 26 : 8);
        text += line;
        if (++day > lengths[month - 1]) day = 1, ++month;
        if (month > 12) month = 1, ++year;
    }
    return text;
}

} // namespace

TEST_SUITE("cli/ahead") {
    TEST_CASE("one object: plans by name, so many winters, each figure with its spread in order") {
        const json ahead = ahead_of({"--plan", best_plan(), "--seasons", "3", "--against", ""});
        REQUIRE(ahead["plans"].size() == 3);
        CHECK(ahead["draws"].get<int>() >= 20);
        CHECK(ahead["plans"][0]["name"] == "mine");
        CHECK(ahead["plans"][1]["name"] == "best");
        CHECK(ahead["plans"][2]["name"] == "against");
        CHECK(ahead["plans"][0]["winters"] == ahead["plans"][1]["winters"]); // mine is the best plan
        for (const json& plan : ahead["plans"]) {
            REQUIRE(plan["winters"].size() == 3);
            int winter = 13;
            for (const json& w : plan["winters"]) {
                CHECK(w["winter"] == winter++);
                for (const auto& [name, figure] : w.items()) {
                    if (!figure.is_object()) continue;
                    const std::string& said = name;  // a name of its own: clang 14 captures no binding
                    CAPTURE(said);
                    CHECK(figure["low"].get<double>() <= figure["median"].get<double>());
                    CHECK(figure["median"].get<double>() <= figure["high"].get<double>());
                }
            }
        }
        // A vine left uncut: more shoots, thinner canes, more blind nodes, fewer good canes [greven-2014, keller-2015].
        const json &cut = ahead["plans"][0]["winters"][0], &uncut = ahead["plans"][2]["winters"][0];
        CHECK(uncut["shoots"]["median"] > cut["shoots"]["median"]);
        CHECK(uncut["thickness_mm"]["median"] < cut["thickness_mm"]["median"]);
        CHECK(uncut["blind_nodes"]["median"] > cut["blind_nodes"]["median"]);
        CHECK(uncut["good_canes"]["median"] <= cut["good_canes"]["median"]);
        CHECK(uncut["creep_mm"].is_null()); // nothing was laid
        // Its overload is remembered: the next season bears less than the well pruned vine's.
        CHECK(ahead["plans"][2]["winters"][1]["yield_kg"]["median"] <
              ahead["plans"][0]["winters"][1]["yield_kg"]["median"]);
    }
    TEST_CASE("the same asked twice is the same answer; text in each language leaves no gap open and fits") {
        const std::string plan = best_plan();
        CHECK(ahead_of({"--plan", plan, "--seasons", "2"}) == ahead_of({"--plan", plan, "--seasons", "2"}));
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            const Ran ran =
                run_program({"ahead", code, "--plan", plan, "--seasons", "1", "--against", "", "--language", language});
            CHECK(ran.status == 0);
            CHECK(ran.out.find('[') == std::string::npos);
            std::size_t from = 0;
            while (from < ran.out.size()) {
                const std::size_t end = ran.out.find('\n', from);
                std::size_t width = 0;
                for (std::size_t i = from; i < end; ++i)
                    width += (static_cast<unsigned char>(ran.out[i]) & 0xc0) != 0x80;
                CHECK(width <= 100);
                from = end + 1;
            }
        }
    }
    TEST_CASE("cold climates open buds by hardiness, mild ones by heat, and the variety is heard") {
        const std::string plan = best_plan();
        const json cold = ahead_of({"--plan", plan, "--seasons", "2", "--climate", "colder-continental"}),
                   mild = ahead_of({"--plan", plan, "--seasons", "2", "--climate", "cool-maritime"}),
                   concord = ahead_of({"--plan", plan, "--seasons", "2", "--variety", "concord"});
        CHECK(cold["budbreak_by"]["hardiness"] == 40);
        CHECK(mild["budbreak_by"]["heat-sum"] == 40);
        CHECK(concord["variety"] == "concord");
        CHECK(concord["plans"][0]["winters"][0]["yield_kg"] != cold["plans"][0]["winters"][0]["yield_kg"]);
    }
    TEST_CASE("where spring frost is common more shoots are lost, and crop with them") {
        const auto totals = [](const char* frost) {
            const json vine = json::parse(run_program({"grow", "--seed", "7", "--frost", frost, "--json"}).out);
            const Ran ran = run_program({"ahead", vine["code"], "--plan", "", "--seasons", "4", "--json"});
            CHECK(ran.status == 0);
            double lost = 0, crop = 0;
            const json ahead = json::parse(ran.out);
            for (const json& w : ahead["plans"][1]["winters"]) {
                lost += w["frost_loss_share"]["high"].get<double>();
                crop += w["yield_kg"]["low"].get<double>();
            }
            return std::pair{lost, crop};
        };
        const auto mild = totals("no"), frosty = totals("yes");
        CHECK(frosty.first > mild.first + 0.5);
        CHECK(frosty.second < mild.second);
    }
    TEST_CASE("own temperatures: read, and refused with file and line") {
        const Folder folder;
        const std::string plan = best_plan();
        const json own =
            ahead_of({"--plan", plan, "--seasons", "1", "--temperatures", folder.write("t.csv", warm_days(430))});
        CHECK(own["climate"].is_null());
        CHECK(refused_at({"--plan", plan, "--seasons", "1", "--temperatures",
                       folder.write("gap.csv", "date,tmin_c,tmax_c\n2019-01-01,1,2\n2019-01-03,1,2\n")}) ==
              folder.file("gap.csv") + ":3");
        CHECK(refused_at({"--plan", plan, "--seasons", "1", "--temperatures",
                       folder.write("short.csv", warm_days(100))}) == folder.file("short.csv"));
        CHECK(refused_at({"--plan", plan, "--seasons", "1", "--temperatures", folder.file("none.csv")}) ==
              folder.file("none.csv"));
        CHECK(refused_at({"--plan", plan, "--seasons", "1", "--temperatures", folder.path()}) == folder.path());
        CHECK(refused_at({"--plan", plan, "--seasons", "1", "--temperatures", "/dev/zero"}).starts_with("/dev/zero"));
    }
    TEST_CASE("seasons from 1 to 10 and nothing else; unknown climates, varieties and bad plans are refused by name") {
        for (const char* seasons : {"0", "11", "1000", "-1", "1,000", "two", "1.5", ""}) {
            CAPTURE(seasons);
            CHECK(refused_at({"--plan", "", "--seasons", seasons}) == "--seasons");
        }
        CHECK(refused_at({"--plan", ""}) == "ahead");
        CHECK(refused_at({"--seasons", "1"}) == "ahead");
        CHECK(refused_at({"--plan", "", "--seasons", "1", "--climate", "moon"}) == "--climate");
        CHECK(refused_at({"--plan", "", "--seasons", "1", "--variety", "moon"}) == "--variety");
        CHECK(refused_at({"--plan", "", "--seasons", "1", "--south", "maybe"}) == "--south");
        CHECK(refused_at({"--plan", "cut a9999.1+5.0 shears", "--seasons", "1"}).starts_with("plan"));
        CHECK(
            refused_at({"--plan", "", "--seasons", "1", "--against", "cut a9999.1+5.0 shears"}).starts_with("--against"));
    }
}
