// constants and checks: what the program says of its own numbers.
#include <doctest/doctest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "sim/checks/check.h"
#include "sim/growth/growth_constants.h"
#include "sim/vine/words_of.h"
#include "tests/cli/answered.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

TEST_SUITE("cli/model") {
    TEST_CASE("constants: every constant the growth code can name, with its value, range, status and source") {
        const json printed = answered({"constants"}, "verb-constants");
        std::map<std::string, json> by_name;
        for (const json& row : printed["constants"]) {
            CHECK(by_name.emplace(row["name"], row).second);
            CAPTURE(row["name"].get<std::string>());
            if (row["status"] == "read") CHECK(row["source"] != "-");
            CHECK(row["cite"].is_null() == (row["source"] == "-")); // every key leads to its work
        }
        const growth::Constants constants;
        for (const growth::ConstantRow& row : growth::constant_rows()) {
            CAPTURE(row.name);
            const json& found = by_name[std::string(row.name)];
            REQUIRE(found.is_object());
            CHECK(found["value"].get<double>() == doctest::Approx(constants.*row.value).epsilon(1e-6));
            CHECK(found["low"].get<double>() == doctest::Approx(row.low));
            CHECK(found["status"] == std::string(word_of(row.status)));
            CHECK(found["editable"] == row.editable);
        }
        CHECK(by_name["hardiness.concord.hardiest"]["value"] == -29.5);
        CHECK(by_name["frost.burst.vinifera"]["source"] == "gardea-1987");
        CHECK(by_name["secondary_f"]["status"] == "memory");
        CHECK(run_program({"constants"}).out.find("budburst_b0") != std::string::npos);
    }
    TEST_CASE("checks: one by number, in text and as an object; a number that is none is refused") {
        const json printed = answered({"checks", "--only", "7"}, "verb-checks");
        REQUIRE(printed["checks"].size() == 1);
        const json& check = printed["checks"][0];
        CHECK(check["id"] == 7);
        CHECK(check["group"] == "independent");
        CHECK(check["source"] == "ferguson-2014");
        CHECK(check["passes"] == true);
        CHECK(check["known"].is_null());
        CHECK(check["values"].size() == 3);
        for (const char* language : {"en", "es", "es-CL"}) {
            const Ran text = run_program({"checks", "--only", "8", "--language", language});
            CHECK(text.status == 0);
            CHECK(text.out.find('[') == std::string::npos);
            CHECK(text.out.find("ferguson-2014") != std::string::npos);
        }
        for (const char* none : {"0", "34", "50", "x", "7.5", "99999999999999999999"}) {
            CAPTURE(none);
            const Ran refused = run_program({"checks", "--only", none});
            CHECK(refused.status == 2);
            CHECK(refused.out.empty());
            CHECK(refused.err.starts_with("spurwright: --only: "));
        }
    }
    TEST_CASE("checks: all of them, no unrecorded failure, at most three recorded, each group there") {
        const json printed = answered({"checks"}, "verb-checks");
        CHECK(printed["checks"].size() == checks::all_checks().size());
        CHECK(printed["checks"].size() >= 45);
        int failed = 0;
        std::map<std::string, int> groups;
        for (const json& check : printed["checks"]) {
            CAPTURE(check["id"].get<int>());
            ++groups[check["group"]];
            const std::string source = check["source"];
            CHECK(check["cite"].is_null() == (source == "-" || source == "exact" || source == "formula"));
            CHECK((check["passes"] == true) == check["known"].is_null());
            failed += check["passes"] == false;
        }
        CHECK(failed <= 3);
        CHECK(groups.size() == 7);
    }
}
