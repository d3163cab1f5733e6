// What the verbs print: the fields of the documents, the same numbers from every side, and nothing that is not true.
#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "scenarios/commands/fingerprint.h"
#include "tests/cli/answered.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

namespace {

const std::string little = SPURWRIGHT_SOURCE "/assets/vines/little.json";

std::string text_of(const std::vector<std::string>& arguments) {
    const Ran ran = run_program(arguments);
    CHECK(ran.status == 0);
    CHECK(ran.err.empty());
    return ran.out;
}

// No line wider than the console, but for what is to be copied whole; no gap left open.
void check_page(const std::string& text) {
    CHECK(text.find('{') == std::string::npos);
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        std::size_t width = 0;
        for (std::size_t i = from; i < end; ++i) width += (text[i] & 0xc0) != 0x80;
        CAPTURE(text.substr(from, end - from));
        CHECK(width <= 100);
        CHECK((end == from || text[end - 1] != ' '));
        from = end + 1;
    }
}

} // namespace

TEST_SUITE("cli/verbs") {
    TEST_CASE("grow prints a code that show grows again, anywhere, to the same hash") {
        const json grown = answered({"grow", "--seed", "77", "--age", "9", "--vigour", "high", "--frost", "yes",
                                      "--spacing", "1.5m", "--wire", "1m", "--neighbours", "near"},
                                     "verb-grow");
        const Folder folder;
        const json shown = answered({"show", grown["code"]}, "verb-grow", folder.path());
        CHECK(shown == grown);
        CHECK(grown["age_years"] == 9);
        CHECK(grown["site"]["spacing_mm"] == 1500);
        CHECK(grown["site"]["wire_mm"] == 1000);
        CHECK(grown["site"]["neighbours"]["right"] == "none");
        CHECK(grown["candidates"].size() >= 4);
    }
    TEST_CASE("without a seed each vine is a fresh one, and its code still names it") {
        const json one = answered({"grow"}, "verb-grow"), other = answered({"grow"}, "verb-grow");
        CHECK(one["code"] != other["code"]);
        CHECK(answered({"show", one["code"]}, "verb-grow")["hash"] == one["hash"]);
    }
    TEST_CASE("lengths may carry any unit and mean the same") {
        const json m = answered({"grow", "--seed", "3", "--spacing", "1.8m"}, "verb-grow");
        CHECK(answered({"grow", "--seed", "3", "--spacing", "180cm"}, "verb-grow")["hash"] == m["hash"]);
        CHECK(answered({"grow", "--seed", "3", "--spacing", "1800 mm"}, "verb-grow")["hash"] == m["hash"]);
        CHECK(answered({"grow", "--seed", "3", "--spacing", "6ft"}, "verb-grow")["code"].is_null());
    }
    TEST_CASE("a vine no code can name goes through a file; one with a code keeps it there") {
        const Folder folder;
        const json free = answered({"grow", "--seed", "5", "--drip", "no", "-o", folder.file("v.json")}, "verb-grow");
        CHECK(free["code"].is_null());
        CHECK(answered({"show", folder.file("v.json")}, "verb-grow")["hash"] == free["hash"]);
        CHECK(schema_fault("vine-1", file_text(folder.file("v.json"))) == "");
        const json coded = answered({"grow", "--seed", "5", "-o", folder.file("w.json")}, "verb-grow");
        CHECK(answered({"show", folder.file("w.json")}, "verb-grow")["code"] == coded["code"]);
        CHECK(schema_fault("vine-1", file_text(folder.file("w.json"))) == "");
        CHECK(folder.files() == 2);
    }
    TEST_CASE("the little vine's four canes as counted by hand") {
        const json shown = answered({"show", little}, "verb-grow");
        CHECK(shown["code"].is_null());
        CHECK(shown["hash"] == "c5e6dcf2ebe172d4");
        REQUIRE(shown["candidates"].size() == 4); // a6 has two buds and is none, a2 was laid last winter
        CHECK(shown["candidates"][0]["id"] == "a2");
        CHECK(shown["candidates"][0]["notes"] == json::array({"laid-last-winter"}));
        const json& a4 = shown["candidates"][1];
        CHECK(a4["id"] == "a4");
        CHECK(a4["diameter_mm"] == 8.45);
        CHECK(a4["mean_internode_mm"] == 66.25);
        CHECK(a4["count_buds"] == 5);
        CHECK(a4["distance_to_head_mm"] == 94);
        CHECK(a4["below_wire_mm"] == 14);
        CHECK(shown["candidates"][2]["below_wire_mm"] == -4);
        CHECK(shown["candidates"][3]["distance_to_head_mm"] == 78);
    }
    TEST_CASE("best's points are judge's for the same plan, and no listed plan has more than the first") {
        const json best = answered({"best", code, "--top", "5"}, "verb-best");
        REQUIRE(best["plans"].size() == 5);
        CHECK(best["plans_counted"] >= 1'000);
        double before = 100.0;
        for (const json& plan : best["plans"]) {
            const json judged = answered({"judge", code, "--plan", plan["plan"]}, "verb-judge");
            CHECK(judged["points"] == plan["points"]);
            CHECK(judged["best_points"] == best["plans"][0]["points"]);
            CHECK(judged["plans_counted"] == best["plans_counted"]);
            CHECK(plan["points"].get<double>() <= before);
            before = plan["points"];
        }
        CHECK(answered({"judge", code, "--plan", best["plans"][0]["plan"]}, "verb-judge")["plans_better"] == 0);
    }
    TEST_CASE("the little vine offers 186 plans, counted by hand") {
        CHECK(answered({"best", little}, "verb-best")["plans_counted"] == 186);
    }
    TEST_CASE("findings add up, each has a source, a status and a sentence") {
        const json judged = answered({"judge", code, "--plan", ""}, "verb-judge");
        CHECK(judged["points"].get<double>() <= 5);
        int tenths = 0, out_of = 0;
        for (const json& f : judged["findings"]) {
            tenths += static_cast<int>(f["points"].get<double>() * 10 + 0.5);
            out_of += static_cast<int>(f["out_of"].get<double>() * 10 + 0.5);
            CHECK(f["sentence"].get<std::string>().find('[') == std::string::npos);
            CHECK(f["source"].get<std::string>().find('[') == std::string::npos);
        }
        CHECK(out_of == 1000);
        CHECK(tenths == static_cast<int>(judged["points_before_caps"].get<double>() * 10 + 0.5));
    }
    TEST_CASE("the language changes sentences and nothing else") {
        const json english = answered({"judge", code, "--plan", ""}, "verb-judge");
        json spanish = answered({"judge", code, "--plan", "", "--language", "es-CL"}, "verb-judge");
        CHECK(spanish["language"] == "es-CL");
        CHECK(spanish["points"] == english["points"]);
        CHECK(spanish["findings"].size() == english["findings"].size());
        for (std::size_t i = 0; i < english["findings"].size(); ++i) {
            CHECK(spanish["findings"][i]["key"] == english["findings"][i]["key"]);
            CHECK(spanish["findings"][i]["arguments"] == english["findings"][i]["arguments"]);
            CHECK(spanish["findings"][i]["sentence"] != english["findings"][i]["sentence"]);
        }
    }
    TEST_CASE("other house rules, another set and hash; a house's own thresholds are marked so") {
        const Folder folder;
        const std::string own = folder.write(
            "own.json",
            "{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"north-block\", \"base\": \"general\", "
            "\"rules\": {\"cane-diameter\": {\"full\": [7, 10]}}}");
        const json general = answered({"judge", code, "--plan", ""}, "verb-judge"),
                   house = answered({"judge", code, "--plan", "", "--rules", own}, "verb-judge");
        CHECK(house["rule_set"] == "north-block");
        CHECK(house["rule_set_hash"] != general["rule_set_hash"]);
        for (const json& f : house["findings"]) CHECK((f["status"] == "house") == (f["rule"] == "cane-diameter"));
        answered({"best", code, "--rules", "slow-arms"}, "verb-best");
    }
    TEST_CASE("buds, vine-size and bud-kill print what the worked examples say [smith-2023, cornell-nny-2014]") {
        const json buds = answered({"buds", "--formula", "20+20", "--prunings", "1.5 lb"}, "verb-buds");
        CHECK(buds["rounded"] == 30); // [auburn-2021]
        CHECK(buds["by_space"].is_null());
        CHECK(buds["source"] == "smith-2023");
        for (const char* formula : {"20+20", "30+10", "20+10", "14+10", "60+10"})  // every key leads to its work
            CHECK(answered({"buds", "--formula", formula, "--prunings", "1kg"}, "verb-buds")["cite"].is_string());
        for (const char* method : {"cornell", "msu", "purdue"})
            CHECK(answered({"bud-kill", "--dead", "35", "--of", "100", "--target", "24", "--method", method}, "verb-bud-kill")["cite"].is_string());
        const json tight = answered({"buds", "--formula", "20+20", "--prunings", "800g", "--spacing", "1.8m"}, "verb-buds");
        CHECK(tight["buds"].get<double>() == doctest::Approx(35.27).epsilon(0.001));
        CHECK(tight["by_space"] == json::array({22, 31}));
        CHECK(tight["smaller"] == 31);
        CHECK(answered({"buds", "--formula", "21+9", "--prunings", "16oz"}, "verb-buds")["status"] == "choice");
        const json size = answered({"vine-size", "--prunings", "0.8kg", "--spacing", "1.8m"}, "verb-vine-size");
        CHECK(size["kg_per_m"].get<double>() == doctest::Approx(0.4444).epsilon(0.001));
        CHECK(size["class"] == "target");
        CHECK(size["cite"].is_string());
        CHECK(answered({"vine-size", "--prunings", "0.8kg", "--spacing", "1.8m", "--set", "warm"}, "verb-vine-size")["class"] == "small");
        const json kill = answered({"bud-kill", "--dead", "35", "--of", "100", "--target", "24"}, "verb-bud-kill");
        CHECK(kill["buds"].get<double>() == doctest::Approx(32.4));
        CHECK(kill["advice"] == "leave-more");
        CHECK(answered({"bud-kill", "--dead", "40", "--of", "100", "--target", "24", "--method", "ohio-penn"}, "verb-bud-kill")["status"] == "memory");
        for (const std::vector<std::string>& asked : {std::vector<std::string>{"buds", "--formula", "20+20", "--prunings", "300g", "--spacing", "1.6m"},
                                                      {"vine-size", "--prunings", "2kg", "--spacing", "1.8m"},
                                                      {"bud-kill", "--dead", "20", "--of", "30", "--target", "24"}})
            for (const char* language : {"en", "es"}) {
                auto words = asked;
                words.insert(words.end(), {"--language", language});
                check_page(text_of(words));
            }
    }
    TEST_CASE("prune writes the vine after the plan, weigh says what came off") {
        const Folder folder;
        const std::string plan = answered({"best", code}, "verb-best")["plans"][0]["plan"];
        const json pruned = answered({"prune", code, "--plan", plan, "-o", folder.file("p.json")}, "verb-prune");
        CHECK(pruned["plan"] == plan);
        CHECK(pruned["pruned_from"] == answered({"show", code}, "verb-grow")["hash"]);
        const json shown = answered({"show", folder.file("p.json")}, "verb-grow");
        CHECK(shown["hash"] == pruned["hash"]);
        CHECK(schema_fault("vine-1", file_text(folder.file("p.json"))) == "");
        const json weighed = answered({"weigh", code, "--plan", plan}, "verb-weigh");
        CHECK(weighed["one_year_removed_g"].get<double>() > 100);
        CHECK(weighed["one_year_nodes_removed_share"].get<double>() > 0.5);
        const json nothing = answered({"weigh", code, "--plan", ""}, "verb-weigh");
        CHECK(nothing["one_year_removed_g"] == 0);
        CHECK(nothing["one_year_kept_g"].get<double>() ==
              doctest::Approx(weighed["one_year_removed_g"].get<double>() + weighed["one_year_kept_g"].get<double>())
                  .epsilon(0.0001));
    }
    TEST_CASE(
        "the first job: the best plan has at least 95 points, the beginner's far fewer, on every vine of the scene") {
        for (const char* number : {"1", "2", "3", "4", "5"}) {
            const json job = answered({"job", "--vine", number}, "verb-job");
            CHECK(job["best"]["points"].get<double>() >= 95);
            CHECK(job["beginner"]["points"].get<double>() <= job["best"]["points"].get<double>() - 15);
            CHECK(job["best"]["plans_better"] == 0);
            CHECK(job["beginner"]["plans_better"].get<std::int64_t>() > 0);
            CHECK(answered({"best", job["code"]}, "verb-best")["plans"][0]["plan"] == job["best"]["plan"]);
        }
        const std::string scene = file_text(SPURWRIGHT_SOURCE "/assets/scenes/first.json");
        CHECK(schema_fault("scene-2", scene) == "");
    }
    TEST_CASE("the first job keeps its report, vine code and plans, or nothing where the folder is none") {
        const Folder folder;
        const json job = answered({"job", "--folder", folder.path()}, "verb-job");
        CHECK(file_text(folder.file("vine.txt")) == job["code"].get<std::string>() + "\n");
        CHECK(file_text(folder.file("best-plan.txt")) == job["best"]["plan"].get<std::string>() + "\n");
        CHECK(file_text(folder.file("beginner-plan.txt")) == job["beginner"]["plan"].get<std::string>() + "\n");
        CHECK(text_of({"job"}).find(file_text(folder.file("report.txt")).substr(0, 60)) != std::string::npos);
        const Ran refused = run_program({"job", "--folder", folder.file("nowhere")});
        CHECK(refused.status == 2);
        CHECK(refused.err.find("nowhere") != std::string::npos);
    }
    TEST_CASE("pages fit 100 columns and leave no gap open, in every language") {
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            for (const char* number : {"1", "3", "5"}) {
                const std::string job = text_of({"job", "--vine", number, "--language", language});
                check_page(job);
                CHECK(job.find('[') == std::string::npos);
            }
            check_page(text_of({"judge", code, "--plan", "", "--language", language}));
            check_page(text_of({"weigh", code, "--plan", "", "--language", language}));
            check_page(text_of({"show", code, "--language", language}));
            check_page(text_of({"show", little, "--language", language}));
            check_page(text_of({"best", code, "--top", "3", "--language", language}));
            check_page(text_of({"--help", "--language", language}));
            for (const char* verb : {"job", "grow", "show", "prune", "judge", "best", "ahead", "weigh", "words", "fingerprint", "constants", "checks"})
                check_page(text_of({verb, "--help", "--language", language}));
        }
        CHECK(text_of({"job", "--language", "es"}).find("Es práctica, nada más.") != std::string::npos);
        CHECK(text_of({"job"}).find("Training aid only.") != std::string::npos);
        CHECK(text_of({"weigh", code, "--plan", "", "--language", "es"})
                  .ends_with("\npalabras aún no revisadas por un podador de habla hispana\n"));
        CHECK(text_of({"weigh", code, "--plan", ""}).find("native") == std::string::npos);
    }
    TEST_CASE("fingerprint is one number, the same twice and from another folder") {
        const Folder folder;
        const json one = answered({"fingerprint"}, "verb-fingerprint"),
                   again = answered({"fingerprint"}, "verb-fingerprint", folder.path());
        CHECK(one == again);
        CHECK(one["vines"] == 64);
        CHECK(commands::fingerprint_sites().size() == 64);
    }
    TEST_CASE("words: the files agree, and the open wordings are listed") {
        const json checked = answered({"words", "--check"}, "verb-words");
        CHECK(checked["missing"].empty());
        CHECK(answered({"words", "--open", "--language", "es"}, "verb-words")["open"].size() > 300);
        CHECK(answered({"words", "--open"}, "verb-words")["open"].empty());
    }
    TEST_CASE("words --check answers no where the files do not agree, and no assets at all is status 3") {
        const Folder folder;
        std::filesystem::copy(SPURWRIGHT_SOURCE "/assets", folder.file("assets"),
                              std::filesystem::copy_options::recursive);
        std::string spanish = file_text(folder.file("assets/words/es.json"));
        const std::string line = "  \"where.code\": \"el código\",\n";
        REQUIRE(spanish.find(line) != std::string::npos);
        folder.write("assets/words/es.json", spanish.erase(spanish.find(line), line.size()));
        ::setenv("SPURWRIGHT_ASSETS", folder.file("assets").c_str(), 1);
        const Ran checked = run_program({"words", "--check"}), shown = run_program({"show", code});
        ::setenv("SPURWRIGHT_ASSETS", folder.file("none").c_str(), 1);
        const Ran nowhere = run_program({"show", code});
        ::unsetenv("SPURWRIGHT_ASSETS");
        CHECK(checked.status == 1);
        CHECK(checked.out.starts_with("es: where.code is missing.\n"));
        CHECK(shown.status == 0);
        CHECK(nowhere.status == 3);
        CHECK(nowhere.out.empty());
        CHECK(nowhere.err == "spurwright: SPURWRIGHT_ASSETS: There is no folder " + folder.file("none") + ".\n");
    }
    TEST_CASE("the program links no GL, X, GLFW or cairo") {
        const Folder folder;
        const std::string list = folder.file("libraries");
        REQUIRE(std::system(("ldd " SPURWRIGHT_PROGRAM " > " + list).c_str()) == 0);
        const std::string libraries = file_text(list);
        CHECK(libraries.find("libc.so") != std::string::npos);
        for (const char* other : {"libGL", "libEGL", "libX11", "libglfw", "libcairo"})
            CHECK(libraries.find(other) == std::string::npos);
    }
    TEST_CASE("version, help") {
        CHECK(text_of({"--version"}).starts_with("spurwright "));
        CHECK(text_of({"help"}) == text_of({"--help"}));
    }
}
