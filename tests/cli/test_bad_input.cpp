// Whatever is typed or read: one sentence on standard error that names what and where, exit status 2, nothing on
// standard output, nothing half written.
#include <doctest/doctest.h>

#include <algorithm>

#include "sim/vine/vine_code.h"
#include "tests/cli/answered.h"

using namespace spurwright::test;

namespace {

const std::string little = SPURWRIGHT_SOURCE "/assets/vines/little.json";

} // namespace

TEST_SUITE("cli/bad-input") {
    TEST_CASE("no verb, an unknown verb, an unknown option") {
        CHECK(refused({"prun", code}) == "prun: There is no verb \"prun\"; spurwright --help lists them.");
        CHECK(refused({"grow", "--sed", "1"}) ==
              "--sed: grow has no option \"--sed\"; spurwright grow --help lists them.");
        CHECK(refused({"--sed"}) == "--sed: \"--sed\" is no option here; a verb comes first.");
        CHECK(refused({}) == "Say what to do: spurwright --help lists the verbs.");
        CHECK(refused({"show", code, "more"}) == "show: \"more\" is one word too many.");
        CHECK(refused({"grow", "--seed", "1", "--seed", "2"}) == "--seed: This option stands twice.");
        CHECK(refused({"show"}) == "show: CODE|FILE is missing: a vine code or a vine file.");
        CHECK(refused({"judge", code}) == "judge: --plan TEXT is missing.");
        CHECK(run_program({"grow", "--seed"}).err == "spurwright: --seed: A value must follow.\n");
        CHECK(refused({"show", code, "--language", "xx"}) ==
              "--language: There is no language xx; there are en, es, es-ES, es-CL.");
        CHECK(refused({"words"}) == "words: Say either --open or --check.");
    }
    TEST_CASE("a code mistyped is refused with its group, one of a later generator by number") {
        CHECK(refused({"show", "00RM-K1SX-G00Q-0004-0005-046"}) ==
              "the code: A vine code has 24 characters; this has 23.");
        CHECK(refused({"show", "00RM-K1SY-G00Q-0004-0005-046T"}) ==
              "group 2 of the code: Group 2 of 6, K1SY, was mistyped.");
        CHECK(refused({"show", "00RM-K1SX-GO0Q-0U04-0005-046T"}) ==
              "group 4 of the code: Group 4 of 6, 0U04, was mistyped.");
        CHECK(refused({"show", "00RM-K1SX-G0+Q-0004-0005-046T"}) ==
              "group 3 of the code: Group 3 of 6, G0+Q, was mistyped.");
        CHECK(refused({"show", "K1SX-00RM-G00Q-0004-0005-046T"}) ==
              "group 1 of the code: Group 1 of 6, K1SX, was mistyped.");
        spurwright::CodedSite later;
        later.recipe = 31;
        const std::string newest = std::to_string(spurwright::newest_recipe);
        CHECK(refused({"show", spurwright::print_code(later)}) ==
              "the code: This code needs generator 31; this program grows " + newest + ".");
    }
    TEST_CASE("a plan with an unknown word, part or wood already gone names edit and column") {
        CHECK(refused({"judge", little, "--plan", "mark a4 left; hack a5"}) ==
              "plan, edit 2, column 15: \"hack\" is no act; cut, lay, tie and mark are.");
        CHECK(refused({"judge", little, "--plan", "mark a99 left"}) ==
              "plan, edit 1, column 6: a99 is not on this vine.");
        CHECK(refused({"judge", little, "--plan", "cut a2.1+18.0 shears; cut a5.3+20.0 shears"}) ==
              "plan, edit 2, column 27: a5.3 is already gone; edit 1 cut it off.");
        CHECK(refused({"prune", little, "--plan", "pull b1", "-o", "x.json"}) ==
              "plan, edit 1, column 1: \"pull\" is an act this version does not know yet.");
        CHECK(refused({"weigh", little, "--plan", "plan2 mark a4 left"}).find("plan of a later version") !=
              std::string::npos);
        CHECK(refused({"weigh", little, "--plan", "cut a4.1+nan shears"}).find("is not") != std::string::npos);
        CHECK(refused({"weigh", little, "--plan", "cut a4.1+99999999999 shears"}).starts_with("plan, edit 1, column"));
        CHECK(refused({"weigh", little, "--plan", "cut a4.1-5 shears"}).starts_with("plan, edit 1, column"));
        CHECK(refused({"weigh", little, "--plan", "lay a1 left wraps 1"}) ==
              "plan, edit 1, column 5: a1 is a trunk; a trunk cannot be laid.");
        CHECK(refused({"weigh", little, "--plan", std::string(70'000, 'x')}).starts_with("plan"));
        CHECK(refused({"weigh", little, "--plan", std::string("mark a4 left\nmark a5 left")})
                  .starts_with("plan, edit 1, column"));
    }
    TEST_CASE("a weight without unit, below nothing or of no unit, and a formula that is none") {
        const auto buds = [](const std::string& formula, const std::string& prunings) {
            return refused({"buds", "--formula", formula, "--prunings", prunings});
        };
        CHECK(buds("20+20", "1.5") == "--prunings: \"1.5\" has no unit; write 800g, 0.8kg or 1.5lb.");
        CHECK(buds("20+20", "1.5stone").starts_with("--prunings: \"1.5stone\" is no weight"));
        CHECK(buds("20+20", "nan kg").starts_with("--prunings: \"nan kg\" is no weight"));
        CHECK(buds("20+20", "inflb").starts_with("--prunings: \"inflb\" is no weight"));
        CHECK(buds("20+20", "-0.5kg") == "--prunings: \"-0.5kg\" is less than nothing.");
        CHECK(buds("20+20", "0,8kg").starts_with("--prunings: Write a point"));
        CHECK(buds("20+20", "1e999kg").ends_with("is too large."));
        for (const char* formula : {"20", "20+", "+20", "20+20+20", "20 + 20", "a+b", "-1+20", "nan+20", "20+1e9", ""})
            CHECK(buds(formula, "1kg").starts_with("--formula: "));
        CHECK(refused({"buds", "--formula", "20+20", "--prunings", "1kg", "--spacing", "0m"}).starts_with("--spacing: "));
        CHECK(refused({"vine-size", "--prunings", "1kg", "--spacing", "1.8"}).starts_with("--spacing: "));
        CHECK(refused({"vine-size", "--prunings", "1kg", "--spacing", "1.8m", "--set", "hot"}).starts_with("--set: "));
        CHECK(refused({"bud-kill", "--dead", "5", "--of", "4", "--target", "24"}).starts_with("--dead: "));
        CHECK(refused({"bud-kill", "--dead", "5", "--of", "0", "--target", "24"}).starts_with("--of: "));
        CHECK(refused({"bud-kill", "--dead", "1", "--of", "4", "--target", "24", "--method", "guess"}).starts_with("--method: "));
    }
    TEST_CASE("unwise edits are judged, not refused: two-year wood laid, the trunk cut") {
        for (const char* plan : {"lay a2 left wraps 1", "cut a1.1+100.0 saw", "cut a1.0+50 shears"}) {
            const Ran ran = run_program({"judge", little, "--plan", plan, "--json"});
            CHECK(ran.status == 0);
            CHECK(ran.err.empty());
            CHECK(schema_fault("verb-judge", ran.out) == "");
        }
        CHECK(run_program({"judge", little, "--plan", "cut a1.1+100.0 saw"}).out.find("The trunk a1 was cut") !=
              std::string::npos);
    }
    TEST_CASE("NaN, infinite, negative, huge, unitless or wordless settings") {
        CHECK(refused({"grow", "--spacing", "nan"}) ==
              "--spacing: \"nan\" is no length; write a number and a unit such as 1.8m, 900mm or 6ft.");
        CHECK(refused({"grow", "--spacing", "infm"}) ==
              "--spacing: \"infm\" is no length; write a number and a unit such as 1.8m, 900mm or 6ft.");
        CHECK(refused({"grow", "--spacing", "-1.8m"}) ==
              "--spacing: The vine spacing must lie between 0.9 and 3 m; -1.8 does not.");
        CHECK(refused({"grow", "--spacing", "1e300m"})
                  .starts_with("--spacing: The vine spacing must lie between 0.9 and 3 m; 1e+300 does not"));
        CHECK(refused({"grow", "--spacing", "1e999m"}) == "--spacing: \"1e999m\" is too large.");
        CHECK(refused({"grow", "--spacing", "1.8"}) == "--spacing: \"1.8\" has no unit; write 1.8m, 900mm or 6ft.");
        CHECK(refused({"grow", "--spacing", "1,8m"}) == "--spacing: Write a point, not a comma: \"1,8m\".");
        CHECK(refused({"grow", "--spacing", ""}).starts_with("--spacing: \"\" is no length"));
        CHECK(refused({"grow", "--age", "-5"}).starts_with("--age: The age must lie between 3 and 40"));
        CHECK(refused({"grow", "--age", "12.5"}) == "--age: \"12.5\" is no whole number.");
        CHECK(refused({"grow", "--age", "99999999999999999999"})
                  .starts_with("--age: 99999999999999999999 does not lie between"));
        CHECK(refused({"grow", "--seed", "1099511627776"}).starts_with("--seed: "));
        CHECK(refused({"grow", "--seed", "-1"}).starts_with("--seed: "));
        CHECK(refused({"grow", "--vigour", "huge"}) == "--vigour: \"huge\" is none of: low, moderate, high.");
        CHECK(refused({"grow", "--frost", "maybe"}) == "--frost: \"maybe\" is none of: yes, no.");
        CHECK(refused({"grow", "--catch", "1m,nanm"}).starts_with("--catch: \"nanm\" is no length"));
        CHECK(refused({"grow", "--variety", "pinot"}).starts_with("--variety: "));
        CHECK(refused({"best", code, "--top", "0"}).starts_with("--top: 0 does not lie between 1 and 1000"));
        CHECK(refused({"best", code, "--top", "1e9"}) == "--top: \"1e9\" is no whole number.");
    }
    TEST_CASE(
        "files: missing, a folder, empty, cut short, of another kind, newer, nested 10,000 deep, no text at all") {
        const Folder folder;
        CHECK(refused({"show", folder.file("none.json")}) == folder.file("none.json") + ": There is no such file.");
        CHECK(refused({"show", folder.path()}) == folder.path() + ": This is a folder, not a file.");
        const auto file = [&](const std::string& bytes) { return folder.write("f.json", bytes); };
        const std::string path = folder.file("f.json"), whole = file_text(little);
        CHECK(refused({"show", file("")}) == path + ":1:1: The file ends before its JSON is complete.");
        CHECK(refused({"show", file(whole.substr(0, whole.size() / 2))})
                  .find("The file ends before its JSON is complete") != std::string::npos);
        CHECK(refused({"show", file("{\"kind\": \"recipe\", \"version\": 1}")}) ==
              path + ":1:10: The file is of kind \"recipe\", not \"spurwright-vine\".");
        CHECK(refused({"show", file("{\"kind\": \"spurwright-vine\", \"version\": 2}")}) ==
              path + ":1:40: The file has version 2; this program reads up to version 1. The file is left as it was.");
        CHECK(refused({"show", file(std::string(10'000, '[') + std::string(10'000, ']'))}) ==
              path + ":1:65: Lists and objects are nested deeper than 64 levels.");
        CHECK(refused({"show", file("\xff\xfe\x00\x01")}).find("no valid JSON") != std::string::npos);
        CHECK(refused({"show", file("[]")}) == path + ":1:1: Here must stand an object, but there is a list.");
        CHECK(refused({"judge", code, "--plan", "", "--rules",
                       file("{\"kind\": \"spurwright-house-rules\", \"version\": 9}")})
                  .find("version 9") != std::string::npos);
        CHECK(refused({"judge", code, "--plan", "", "--rules", "nosuch"}).find("There is no such file") !=
              std::string::npos);
        CHECK(refused({"best", code, "--rules", file(std::string(10'000, '['))}).find("nested deeper") !=
              std::string::npos);
    }
    TEST_CASE("a broken vine in a file is refused with part and line, a code that grows another vine too") {
        const Folder folder;
        std::string text = file_text(little);
        text.replace(text.find("\"on\": \"a3.2\""), 12, "\"on\": \"a3.9\"");
        CHECK(refused({"judge", folder.write("f.json", text), "--plan", ""}) ==
              folder.file("f.json") + ":37:5: a7 stands on a node that is not there.");
        text = file_text(little);
        text.insert(1, "\"code\": \"" + code + "\", ");
        CHECK(refused({"show", folder.write("f.json", text)}) ==
              folder.file("f.json") + ":1:10: The code in the file grows another vine than the file holds.");
    }
    TEST_CASE("an output that cannot be written leaves nothing, and what was there stays") {
        const Folder folder;
        CHECK(refused({"grow", "--seed", "1", "-o", folder.file("no/v.json")}) ==
              folder.file("no/v.json") + ": There is no such folder to write in.");
        CHECK(refused({"prune", code, "--plan", "", "-o", folder.path()}) ==
              folder.path() + ": This is a folder, not a file.");
        CHECK(refused({"grow", "--seed", "1", "-o", "/dev/full"}) ==
              "/dev/full: This is no plain file; nothing was written.");
        folder.write("old.json", "old");
        refused({"prune", code, "--plan", "cut a1.99+1 saw", "-o", folder.file("old.json")});
        CHECK(file_text(folder.file("old.json")) == "old");
        CHECK(folder.files() == 1);
    }
    TEST_CASE("a vine already pruned this winter is not judged or searched again") {
        const Folder folder;
        REQUIRE(run_program({"prune", little, "--plan", "cut a5.0+8.0 shears", "-o", folder.file("p.json")}).status ==
                0);
        for (const char* verb : {"judge", "best"}) {
            std::vector<std::string> arguments{verb, folder.file("p.json")};
            if (std::string(verb) == "judge") arguments.insert(arguments.end(), {"--plan", ""});
            CHECK(refused(arguments) ==
                  folder.file("p.json") +
                      ": This vine is already pruned this winter; give the vine before its first cut.");
        }
    }
    TEST_CASE("refusals speak the language asked") {
        CHECK(refused({"show", "00RM-K1SX-G00Q-0004-0005-046", "--language", "es"}) ==
              "el código: Un código de parra tiene 24 letras; éste tiene 23.");
        CHECK(refused({"bogus", "--language=es"}) == "bogus: No hay verbo \"bogus\"; spurwright --help los muestra.");
    }
}
