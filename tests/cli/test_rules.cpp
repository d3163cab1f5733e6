// rules, acceptable and what best can do after an accident: fields, words, refusals.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "sim/rules/rule_list.h"
#include "tests/cli/answered.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

namespace {

const std::string little_file = SPURWRIGHT_SOURCE "/assets/vines/little.json";

std::string own_set(const std::string& rules, const std::string& base = ", \"base\": \"general\"") {
    return "{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"north\"" + base + ",\n\"rules\": {\n" + rules + "\n}}\n";
}

} // namespace

TEST_SUITE("cli/rules") {
    TEST_CASE("every rule with its band, weight, source, status and sentence, in either language") {
        const json english = answered({"rules"}, "verb-rules"), spanish = answered({"rules", "--language", "es"}, "verb-rules");
        REQUIRE(english["rules"].size() == rules::rule_count);
        CHECK(english["rule_set"] == "general");
        CHECK(english["checked"].is_null());
        for (std::size_t i = 0; i < rules::rule_count; ++i) {
            const json &rule = english["rules"][i], &regla = spanish["rules"][i];
            CAPTURE(rule["rule"].get<std::string>());
            CHECK(rule["rule"] == std::string(rules::rule_keys[i]));
            CHECK(rule["sources"].empty() == rule["claims"].empty());
            for (const char* text : {"name", "sentence", "source"}) {
                CHECK(rule[text].get<std::string>().find('[') == std::string::npos);
                CHECK(rule[text] != regla[text]);
            }
            CHECK(regla["weight"] == rule["weight"]);
            CHECK(regla["full"] == rule["full"]);
        }
        const json& diameter = english["rules"][0];
        CHECK(diameter["full"] == json::array({8, 12}));
        CHECK(diameter["half"] == json::array({6.4, 14}));
        CHECK(diameter["unit"] == "mm");
        CHECK(diameter["weight"] == 50);
        CHECK(diameter["parameters"]["bull_above"] == 12.7);
        CHECK(diameter["claims"][0]["source"] == "hellman-2019");
        CHECK(diameter["claims"][0]["low"] == 6.35); // a quarter of an inch
    }
    TEST_CASE("a page of it holds every rule's key and sentence, and no gap") {
        const Ran ran = run_program({"rules", "--rules", "slow-arms"});
        CHECK(ran.status == 0);
        CHECK(ran.out.find('{') == std::string::npos);
        CHECK(ran.out.find('[') == std::string::npos);
        for (const std::string_view key : rules::rule_keys) CHECK(ran.out.find(key) != std::string::npos);
    }
    TEST_CASE("--check reads a house's own file, names it and marks what the house set") {
        const Folder folder;
        const std::string file = folder.write("own.json", own_set("\"cane-diameter\": {\"full\": [7, 10]}"));
        const json checked = answered({"rules", "--check", file}, "verb-rules");
        CHECK(checked["checked"] == file);
        CHECK(checked["own"] == json::array({"cane-diameter.full"}));
        CHECK(checked["rules"][0]["status"] == "house");
        CHECK(checked["rules"][0]["full"] == json::array({7, 10}));
        CHECK(checked["rules"][1]["status"] == "choice");
        CHECK(checked["rule_set_hash"] != answered({"rules"}, "verb-rules")["rule_set_hash"]);
        CHECK(run_program({"rules", "--check", file}).out.find("is in order") != std::string::npos);
    }
    TEST_CASE("--check refuses by key and line what cannot be used") {
        const Folder folder;
        const auto check = [&](const std::string& text) {
            const std::string file = folder.write("bad.json", text);
            const std::string said = refused({"rules", "--check", file});
            CHECK(said.find("bad.json:") != std::string::npos);
            return said;
        };
        std::string said = check(own_set("\"cane-diameter\": {\n\"full\": [13, 12]}")); // crossed
        CHECK(said.find("bad.json:4") != std::string::npos);
        CHECK(said.find("cane-diameter") != std::string::npos);
        said = check(own_set("\"cane-colour\": {\"full\": [1, 2]}")); // no such rule
        CHECK(said.find("bad.json:3") != std::string::npos);
        CHECK(said.find("cane-colour") != std::string::npos);
        said = check(own_set("\"tying\": {\"colour\": 3}")); // no such parameter
        CHECK(said.find("colour") != std::string::npos);
        said = check(own_set("\"tying\": {\"weight\": 30}", "")); // no base: the others are missing
        CHECK(said.find("cane-diameter.weight") != std::string::npos);
        said = check(own_set("\"cane-diameter\": {\"oval\": NaN}"));
        CHECK(said.find("bad.json:3") != std::string::npos);
        said = check(own_set("\"cane-diameter\": {\"oval\": \"wide\"}"));
        CHECK(said.find("cane-diameter.oval") != std::string::npos);
        said = check(own_set("\"cane-diameter\": {\"oval\": 1e300}"));
        CHECK(said.find("bad.json:3") != std::string::npos);
        std::string none;
        for (const std::string_view key : rules::rule_keys)
            none += (none.empty() ? "\"" : ",\n\"") + std::string(key) + "\": {\"weight\": 0}";
        said = check(own_set(none)); // weights that sum to nothing
        CHECK(said.find("bad.json:") != std::string::npos);
        check(own_set("\"tying\": {\"weight\": -1}"));
        check("{\"kind\": \"spurwright-house-rules\", \"version\": 7, \"name\": \"later\", \"rules\": {}}");
        check("not even JSON");
        CHECK(refused({"rules", "--check", folder.path() + "/nowhere.json"}).find("nowhere.json") != std::string::npos);
        CHECK(refused({"rules", "--check", "x.json", "--rules", "general"}).find("--check or --rules") != std::string::npos);
        CHECK(refused({"rules", "--rules", "no-such-set"}).find("no-such-set") != std::string::npos);
    }
}

TEST_SUITE("cli/acceptable") {
    TEST_CASE("the best plan is as good, the empty one is not, and the counts are judge's") {
        const json best = answered({"best", code}, "verb-best");
        const std::string plan = best["plans"][0]["plan"];
        const json good = answered({"acceptable", code, "--plan", plan}, "verb-acceptable");
        CHECK(good["best_points"] == best["plans"][0]["points"]);
        CHECK(good["plans_counted"] == best["plans_counted"]);
        CHECK(good["mine"]["as_good"] == true);
        CHECK(good["mine"]["behind"] == 0);
        CHECK(good["mine"]["plans_better"] == 0);
        CHECK(good["groups"][0]["mine"] == true);
        CHECK(good["groups"].size() + good["more"].get<std::size_t>() == good["groups_counted"].get<std::size_t>());
        const json bad = answered({"acceptable", code, "--plan", ""}, "verb-acceptable");
        CHECK(bad["mine"]["as_good"] == false);
        CHECK(bad["mine"]["margin"].get<double>() < 0);
        CHECK(bad["count"] == good["count"]);
        const json judged = answered({"judge", code, "--plan", ""}, "verb-judge");
        CHECK(bad["mine"]["plans_better"] == judged["plans_better"]);
        CHECK(answered({"acceptable", code}, "verb-acceptable")["mine"].is_null());
    }
    TEST_CASE("pieces that were measured are read finer; what is no piece is refused") {
        const json best = answered({"best", code}, "verb-best")["plans"][0];
        const std::string cane = best["choice"]["left_cane"], far_cane = best["choice"]["right_cane"];
        const std::string pieces = cane.substr(0, cane.find('.')) + "," + far_cane.substr(0, far_cane.find('.'));
        const json by_eye = answered({"acceptable", code}, "verb-acceptable"),
                   finer = answered({"acceptable", code, "--measured", pieces}, "verb-acceptable");
        CHECK(finer["noise"].get<double>() < by_eye["noise"].get<double>());
        CHECK(finer["count"].get<std::uint64_t>() <= by_eye["count"].get<std::uint64_t>());
        for (const char* none : {"a99999", "left", "a4.2", ","})
            CHECK(refused({"acceptable", code, "--measured", none}).find("--measured") != std::string::npos);
    }
    TEST_CASE("every plan that best lists is as good exactly where its points reach the limit") {
        const json good = answered({"acceptable", little_file}, "verb-acceptable");
        const json best = answered({"best", little_file, "--top", "300"}, "verb-best");
        std::size_t reach = 0;
        for (const json& plan : best["plans"]) reach += plan["points"].get<double>() >= good["least_points"].get<double>() - 1e-9;
        CHECK(good["count"] == reach);
        std::size_t members = 0;
        for (const json& group : good["groups"]) members += group["count"].get<std::size_t>();
        if (good["more"] == 0) CHECK(members == reach);
    }
    TEST_CASE("pages in both languages, and a vine without a plan is refused") {
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            const Ran ran = run_program({"acceptable", code, "--plan", "", "--language", language});
            CHECK(ran.status == 0);
            CHECK(ran.out.find('{') == std::string::npos);
            CHECK(ran.out.find('[') == std::string::npos);
        }
        CHECK(refused({"acceptable", code, "--plan", "hack a4"}).find("hack") != std::string::npos);
        CHECK(refused({"acceptable", "nowhere.json"}).find("nowhere.json") != std::string::npos);
    }
}

TEST_SUITE("cli/review") {
    TEST_CASE("what the steps lost is what the best plan has more, and the act that lost a cane is named") {
        const json best = answered({"best", code}, "verb-best")["plans"][0];
        const std::string plan = best["plan"], cane = best["choice"]["left_cane"], axis = cane.substr(0, cane.find('.'));
        for (const std::string& mine : {plan, std::string(), "cut " + axis + ".0+8.0 shears"}) {
            const json r = answered({"review", code, "--plan", mine}, "verb-review");
            double lost = 0;
            for (const json& step : r["steps"]) lost += step["lost"].get<double>();
            CHECK(lost + r["caps_lost"].get<double>() == doctest::Approx(r["best_points"].get<double>() - r["points"].get<double>()));
            CHECK(r["mine_as_good"] == (mine == plan));
            CHECK(r["best"]["plan"] == plan);
            CHECK(r["twins"].size() == 4);
        }
        const json gone = answered({"review", code, "--plan", "cut " + axis + ".0+8.0 shears"}, "verb-review");
        REQUIRE(gone["charges"].size() == 1);
        CHECK(gone["charges"][0]["edit"] == 1);
        CHECK(gone["charges"][0]["missed"] == axis);
        CHECK(gone["charges"][0]["step"] == "choose");
        CHECK(gone["charges"][0]["sentence"].get<std::string>().find(axis) != std::string::npos);
    }
    TEST_CASE("a cut moved is told with its points; a node that is none, or gone, is refused") {
        const json best = answered({"best", code}, "verb-best")["plans"][0];
        const std::string plan = best["plan"], cane = best["choice"]["left_cane"], axis = cane.substr(0, cane.find('.'));
        const json r = answered({"review", code, "--plan", plan, "--move", axis + ".4"}, "verb-review");
        CHECK(r["moved"]["points"].get<double>() == doctest::Approx(r["points"].get<double>() + r["moved"]["gained"].get<double>()));
        CHECK(answered({"judge", code, "--plan", r["moved"]["plan"]}, "verb-judge")["points"] == r["moved"]["points"]);
        CHECK(refused({"review", code, "--plan", plan, "--move", "four"}).find("--move") != std::string::npos);
        CHECK(refused({"review", code, "--plan", plan, "--move", axis + ".200"}).find("--move") != std::string::npos);
        CHECK(refused({"review", little_file, "--plan", "cut a2.0+10.0 shears", "--move", "a4.4"}).find("--move") != std::string::npos);
        CHECK(refused({"review", code}).find("--plan") != std::string::npos);
    }
    TEST_CASE("the page stands alone, in its language, with nothing left open and no text taken for markup") {
        const Folder folder;
        for (const char* language : {"en", "es"}) {
            const std::string file = folder.file(std::string("look <back> ") + language + ".html");
            const Ran ran = run_program({"review", little_file, "--plan", "", "--html", file, "--language", language});
            CHECK(ran.status == 0);
            const std::string page = file_text(file);
            CHECK(page.starts_with("<!DOCTYPE html>\n<html lang=\"" + std::string(language)));
            CHECK(page.ends_with("</html>\n"));
            for (const char* other : {"http", "src=", "href=", "<script", "url("}) CHECK(page.find(other) == std::string::npos);
            CHECK(page.find("<svg") != std::string::npos);
            const std::size_t style_end = page.find("</style>");
            CHECK(page.find('{', style_end) == std::string::npos);
            CHECK(page.find('[', style_end) == std::string::npos);
            for (const char* tag : {"p", "table", "tr", "td", "ul", "li", "svg", "g", "h2", "text"}) {
                const auto times = [&](const std::string& what) {
                    std::size_t n = 0;
                    for (std::size_t at = page.find(what); at != std::string::npos; at = page.find(what, at + 1)) ++n;
                    return n;
                };
                CAPTURE(tag);
                CHECK(times("<" + std::string(tag) + ">") + times("<" + std::string(tag) + " ") == times("</" + std::string(tag) + ">"));
            }
        }
        CHECK(refused({"review", little_file, "--plan", "", "--html", folder.path()}).find(folder.path()) != std::string::npos);
    }
    TEST_CASE("pages of text in every language") {
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            const Ran ran = run_program({"review", code, "--plan", "cut a1.0+50 shears", "--language", language});
            CHECK(ran.status == 0);
            CHECK(ran.out.find('{') == std::string::npos);
            CHECK(ran.out.find('[') == std::string::npos);
        }
    }
}

TEST_SUITE("cli/best-from-here") {
    TEST_CASE("after the first acts of the best plan the rest of it is still the best, and all of it adds up") {
        const json best = answered({"best", code}, "verb-best");
        const std::string plan = best["plans"][0]["plan"];
        CHECK(best["after"].is_null());
        for (std::size_t cut = plan.find("; cut"), n = 0; cut != std::string::npos && n < 6; cut = plan.find("; cut", cut + 1), ++n) {
            const json rest = answered({"best", code, "--after", plan.substr(0, cut)}, "verb-best");
            CHECK(rest["plans"][0]["points"] == best["plans"][0]["points"]);
            CHECK(rest["plans"][0]["plan"] == plan);
            CHECK(plan.ends_with(rest["plans"][0]["rest"].get<std::string>()));
            CHECK(rest["plans_counted"] <= best["plans_counted"]);
        }
        CHECK(answered({"best", code, "--after", plan}, "verb-best")["plans"][0]["rest"] == "");
    }
    TEST_CASE("the best cane cut by mistake: the best from here is worth less, lays another and is judged so") {
        const json best = answered({"best", code}, "verb-best");
        const std::string cane = best["plans"][0]["choice"]["left_cane"], axis = cane.substr(0, cane.find('.'));
        const json rest = answered({"best", code, "--after", "cut " + axis + ".0+8.0 shears", "--top", "3"}, "verb-best");
        REQUIRE(rest["plans"].size() == 3);
        CHECK(rest["plans"][0]["points"] <= best["plans"][0]["points"]);
        for (const json& plan : rest["plans"]) {
            CHECK(plan["choice"]["left_cane"].dump().find(axis + ".") == std::string::npos);
            CHECK(answered({"judge", code, "--plan", plan["plan"]}, "verb-judge")["points"] == plan["points"]);
        }
    }
    TEST_CASE("nothing left to lay is said, and acts that cannot be read are refused") {
        const json none = answered({"best", little_file, "--after", "cut a2.0+10.0 shears; cut a3.0+10.0 shears"}, "verb-best");
        CHECK(none["plans"].empty());
        CHECK(none["plans_counted"] == 0);
        CHECK(run_program({"best", little_file, "--after", "cut a2.0+10.0 shears; cut a3.0+10.0 shears"}).out.find("no cane") != std::string::npos);
        CHECK(refused({"best", little_file, "--after", "hack a2"}).find("hack") != std::string::npos);
    }
}

TEST_SUITE("cli/report") {
    TEST_CASE("judge --report marks the weight against the bundle of this vine") {
        const json best = answered({"best", code}, "verb-best")["plans"][0];
        const std::string plan = best["plan"];
        const double bundle = answered({"weigh", code, "--plan", plan}, "verb-weigh")["one_year_removed_g"];
        const Folder folder;
        const auto judged = [&](double grams) {
            const std::string text = "{\"weight_g\": " + std::to_string(static_cast<int>(grams)) + ", \"tared\": true, \"date\": \"2027-01-10\"}\n";
            CHECK(schema_fault("report-1", text) == "");
            return answered({"judge", code, "--plan", plan, "--report", folder.write("r.json", text)}, "verb-judge");
        };
        const auto weighing = [](const json& j) {
            for (const json& f : j["findings"])
                if (f["rule"] == "prunings-weighed") return f;
            return json();
        };
        const json well = judged(bundle), badly = judged(bundle * 0.8);
        CHECK(weighing(well)["points"] == weighing(well)["out_of"]);
        CHECK(weighing(well)["out_of"].get<double>() > 8);
        CHECK(weighing(badly)["points"] == 0);
        CHECK(well["points"] == well["best_points"]);
        CHECK(badly["points"].get<double>() < well["points"].get<double>());
        CHECK(weighing(answered({"judge", code, "--plan", plan}, "verb-judge")).is_null());
    }
    TEST_CASE("a report that cannot be read is refused by key and line") {
        const Folder folder;
        const auto refused_report = [&](const std::string& text) {
            return refused({"judge", code, "--plan", "", "--report", folder.write("r.json", text)});
        };
        CHECK(refused_report("{}").find("weight_g") != std::string::npos);
        CHECK(refused_report("{\"weight_g\": -1}").find("r.json:1") != std::string::npos);
        CHECK(refused_report("{\"weight_g\": 1e12}").find("r.json:1") != std::string::npos);
        CHECK(refused_report("{\"weight_g\": NaN}").find("r.json:1") != std::string::npos);
        CHECK(refused_report("{\"weight_g\": 840, \"wieght\": 2}").find("wieght") != std::string::npos);
        CHECK(refused_report("[840]").find("r.json") != std::string::npos);
        CHECK(refused({"judge", code, "--plan", "", "--report", "nowhere.json"}).find("nowhere.json") != std::string::npos);
    }
}

TEST_SUITE("cli/sheet") {
    const std::string example_sheet = SPURWRIGHT_SOURCE "/assets/block-sheets/example.json";

    TEST_CASE("a sheet makes the house rules that judge takes, and a page for the wall") {
        const Folder folder;
        const json weak = answered({"sheet", example_sheet, "--strength", "weak", "--house", folder.file("h.json"), "--page", folder.file("p.html")}, "verb-sheet");
        CHECK(weak["target"] == 16);
        const json rules = answered({"rules", "--check", folder.file("h.json")}, "verb-rules");
        CHECK(rules["rule_set_hash"] == weak["rule_set_hash"]);
        const json judged = answered({"judge", code, "--plan", "", "--rules", folder.file("h.json")}, "verb-judge");
        CHECK(judged["rule_set_hash"] == weak["rule_set_hash"]);
        CHECK(file_text(folder.file("p.html")).find("Lower terrace") != std::string::npos);
        CHECK(answered({"sheet", example_sheet}, "verb-sheet")["target"] == 27);
        CHECK(run_program({"sheet", example_sheet, "--language", "es"}).out.find("Hoja del cuadro") != std::string::npos);
    }
    TEST_CASE("an unknown strength, a sheet that is none, a place that cannot be written") {
        CHECK(refused({"sheet", example_sheet, "--strength", "huge"}).find("--strength") != std::string::npos);
        CHECK(refused({"sheet", little_file}).find("little.json") != std::string::npos);
        CHECK(refused({"sheet", "nowhere.json"}).find("nowhere.json") != std::string::npos);
        CHECK(refused({"sheet", example_sheet, "--page", "/no/such/folder/p.html"}).find("/no/such/folder") != std::string::npos);
    }
}
