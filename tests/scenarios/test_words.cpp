// Words: sentences from keys, gaps and measures; the word files complete, agreeing and clean.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "scenarios/words/layout.h"
#include "scenarios/words/load_words.h"
#include "scenarios/words/word_check.h"
#include "sim/rules/rule_list.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using namespace spurwright::words;

namespace {

const io::Assets assets(SPURWRIGHT_SOURCE "/assets");

std::string file_text(const std::string& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

WordFile loaded(std::string_view language) {
    auto file = load_word_file(assets, language);
    REQUIRE_MESSAGE(file.has_value(), language);
    return *std::move(file);
}

Words from(const std::string& json) {
    auto file = read_word_file(json, "w.json");
    REQUIRE(file);
    return Words({*std::move(file)});
}

std::string refused(const std::string& json) {
    const auto file = read_word_file(json, "w.json");
    return file ? "read" : std::string(file.error().key.name) + " " + std::to_string(file.error().where.line);
}

// Every text literal of the sources that names a key: words of lower case joined by dots, of a family that has texts.
std::set<std::string> keys_in_sources(const WordFile& english) {
    std::set<std::string> families, keys;
    for (const auto& [key, text] : english.texts) families.insert(key.substr(0, key.find('.')));
    const std::regex literal("\"([a-z]+(?:\\.[a-z0-9-]+)+)\"");
    for (const char* folder : {"/sim", "/scenarios"})
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(std::string(SPURWRIGHT_SOURCE) + folder)) {
            const std::string extension = entry.path().extension();
            if (extension != ".cpp" && extension != ".h") continue;
            const std::string text = file_text(entry.path());
            for (std::sregex_iterator it(text.begin(), text.end(), literal), end; it != end; ++it) {
                const std::string key = (*it)[1];
                if (families.count(key.substr(0, key.find('.')))) keys.insert(key);
            }
        }
    return keys;
}

} // namespace

TEST_SUITE("scenarios/words") {
    const std::string about = "{\"_about\": {\"language\": \"en\", \"name\": \"English\"}";

    TEST_CASE("gaps are filled by type, in any order, and braces are written twice") {
        const Words w =
            from(about +
                 ", \"a\": \"{part}: {measured} of {n}, {{x}}\", \"b\": \"{side}\", \"side.left\": \"near {part}\"}");
        CHECK(w("a", {{"measured", Length{8'450}}, {"part", AxisId{4}}, {"n", Count{3}}}) == "a4: 8.5 mm of 3, {x}");
        CHECK(w("b", {{"side", TextKey{"side.left"}}, {"part", node_id(AxisId{7}, 2)}}) == "near a7.2");
        CHECK(w("missing") == "[missing]");
        CHECK(w("a", {{"measured", Length{1}}}) == "[part]: 0 mm of [n], {x}");
    }
    TEST_CASE("a plural is chosen by n: 1 is one, all else other") {
        const Words w = from(about + ", \"c.one\": \"{n} cut\", \"c.other\": \"{n} cuts\"}");
        CHECK(w("c", {{"n", Count{1}}}) == "1 cut");
        CHECK(w("c", {{"n", Count{0}}}) == "0 cuts");
        CHECK(w("c", {{"n", Count{12}}}) == "12 cuts");
        CHECK(w("c") == "[n] cuts");
    }
    TEST_CASE("a key that names itself in a circle stops") {
        const Words w = from(about + ", \"a\": \"<{x}>\"}");
        CHECK(w("a", {{"x", TextKey{"a"}}}) == "<<<<<a>>>>>");
    }
    TEST_CASE("measures stand in units people use, without needless decimals") {
        const NumberStyle en;
        CHECK(measure_text(Length{12'000}, en) == "12 mm");
        CHECK(measure_text(Length{66'250}, en) == "66 mm");
        CHECK(measure_text(Length{-4'000}, en) == "-4 mm");
        CHECK(measure_text(Length{1'800'000}, en) == "1.8 m");
        CHECK(measure_text(Length{999'600}, en) == "1000 mm");
        CHECK(measure_text(Mass{650'400}, en) == "650 g");
        CHECK(measure_text(Mass{1'430'000}, en) == "1.43 kg");
        CHECK(measure_text(Mass{1'640}, en) == "1.6 g");
        CHECK(measure_text(Angle{61'400}, en) == "61°");
        CHECK(measure_text(PerMille{804}, en) == "80 %");
        CHECK(measure_text(PerMille{4}, en) == "0.4 %");
        CHECK(measure_text(Strain{18'000}, en) == "1.8 %");
        CHECK(measure_text(Tenths{875}, en) == "87.5");
        CHECK(measure_text(Tenths{1'000}, en) == "100");
        CHECK(points_text({30}, en) == "3.0");
        CHECK(points_text({-4}, en) == "-0.4");
        CHECK(measure_text(Ratio{1.333}, en) == "1.33");
        CHECK(measure_text(Count{9'999}, en) == "9999");
        CHECK(measure_text(Count{70'281'213}, en) == "70,281,213");
        CHECK(measure_text(Length{8'450}, {",", "."}) == "8,5 mm");
        CHECK(measure_text(Count{70'281'213}, {",", "."}) == "70.281.213");
    }
    TEST_CASE("two different measures of one sentence never print alike") {
        const Words w = from(about + ", \"a\": \"{measured}, under {low}\"}");
        CHECK(w("a", {{"measured", Length{7'960}}, {"low", Length{8'000}}}) == "7.96 mm, under 8 mm");
        CHECK(w("a", {{"measured", Length{7'999}}, {"low", Length{8'000}}}) == "7.999 mm, under 8 mm");
        CHECK(w("a", {{"measured", Length{54'600}}, {"low", Length{55'000}}}) == "54.6 mm, under 55 mm");
        CHECK(w("a", {{"measured", Length{1'799'000}}, {"low", Length{1'800'000}}}) == "1799 mm, under 1800 mm");
        CHECK(w("a", {{"measured", Length{8'000}}, {"low", Length{8'000}}}) == "8 mm, under 8 mm");
        CHECK(w("a", {{"measured", PerMille{797}}, {"low", PerMille{800}}}) == "79.7 %, under 80 %");
    }
    TEST_CASE("a unit is said once where one short word joins two measures") {
        const Words w = from(
            about +
            ", \"a\": \"{low} to {high}\", \"b\": \"{low}, {high}\", \"c\": \"from {low} to {high}; {n} a {high}\"}");
        CHECK(w("a", {{"low", Length{8'000}}, {"high", Length{12'000}}}) == "8 to 12 mm");
        CHECK(w("a", {{"low", Length{800'000}}, {"high", Length{1'200'000}}}) == "800 mm to 1.2 m");
        CHECK(w("b", {{"low", Length{8'000}}, {"high", Length{12'000}}}) == "8 mm, 12 mm");
        CHECK(w("c", {{"low", Length{8'000}}, {"high", Length{12'000}}, {"n", Count{2}}}) ==
              "from 8 to 12 mm; 2 a 12 mm");
        CHECK(w("a", {{"low", PerMille{800}}, {"high", PerMille{900}}}) == "80 to 90 %");
    }
    TEST_CASE("a regional file falls back to its base, then to English") {
        const auto chile = load_words(assets, "es-CL");
        REQUIRE(chile);
        CHECK(chile->language() == "es-CL");
        CHECK(chile->measure(Length{8'500}) == "8,5 mm");
        CHECK((*chile)("where.code") == loaded("es").texts.at("where.code"));
        CHECK(chile->unchecked());
        const auto english = load_words(assets, "en");
        REQUIRE(english);
        CHECK_FALSE(english->unchecked());
        CHECK_FALSE(load_words(assets, "fr"));
    }
    TEST_CASE("a word file out of order, with single braces, a number or an unknown key is refused by line") {
        CHECK(refused(about + ",\n\"b\": \"x\",\n\"a\": \"y\"}") == "error.words.order 3");
        CHECK(refused(about + ",\n\"b\": \"{x\"}") == "error.words.braces 2");
        CHECK(refused(about + ",\n\"b\": \"x}\"}") == "error.words.braces 2");
        CHECK(refused(about + ",\n\"b\": \"{}\"}") == "error.words.braces 2");
        CHECK(refused(about + ",\n\"b\": 3}") == "error.json.kind 2");
        CHECK(refused(about + ",\n\"_b\": \"x\"}") == "error.json.unknown-key 2");
        CHECK(refused("{\"a\": \"x\"}") == "error.json.missing 1");
    }
    TEST_CASE("the word files agree: every key, the same gaps, both plurals, no open wording that is not there") {
        std::vector<WordFile> files;
        for (const std::string_view language : languages) files.push_back(loaded(language));
        const WordFaults faults = word_faults(files);
        for (const auto* list : {&faults.missing, &faults.extra, &faults.gaps})
            for (const WordFault& fault : *list) FAIL_CHECK(fault.language << " " << fault.key << " " << fault.what);
    }
    TEST_CASE("the check of word files finds what is missing, extra and gapped otherwise") {
        WordFile en = loaded("en"), es = loaded("es");
        es.texts.erase("where.code");
        es.texts["no.such"] = "x";
        es.texts["where.edit"] = "{source} {stepp}";
        es.texts.erase("best.counted.one");
        es.open.push_back("gone");
        const WordFaults faults = word_faults({en, es});
        CHECK(faults.missing.size() == 3); // one plural twice: beside its other form, and beside English
        CHECK(faults.extra.size() == 4);   // "no.such", and the open list names "gone" and the two keys erased
        CHECK(faults.gaps.size() == 1);
    }
    TEST_CASE("every key that the sources use has a text") {
        const WordFile english = loaded("en");
        const auto keys = keys_in_sources(english);
        CHECK(keys.size() > 400);
        const auto has = [&](const std::string& key) { return english.texts.count(key) > 0; };
        for (const std::string& key : keys) {
            if (std::filesystem::path(key).extension() == ".json") continue;
            CHECK_MESSAGE((has(key) || (has(key + ".one") && has(key + ".other"))), key);
        }
    }
    TEST_CASE("keys made from words have their texts too") {
        const WordFile english = loaded("en");
        const auto need = [&](const std::string& key) { CHECK_MESSAGE(english.texts.count(key) == 1, key); };
        for (const rules::Rule* rule : rules::all_rules) {
            need("rule." + std::string(rule->key()) + ".name");
            need(std::string(rule->asks.name));
        }
        for (const auto step : rules::words_of(rules::Step{})) need("step." + std::string(step));
        for (const auto mend : rules::words_of(rules::Mend{})) need("mend." + std::string(mend));
        for (const auto side : words_of(Side{})) need("post." + std::string(side));
        for (const char* note : {"laid-last-winter", "on-last-winters-cane", "on-last-winters-spur", "below-graft",
                                 "sucker", "from-old-wood", "from-base-bud", "double", "cracked", "spotted", "scarred",
                                 "broken-end", "dead", "cut-off"})
            need(std::string("note.") + note);
    }
    TEST_CASE("users read no barred word and no bare left or right") {
        const std::regex barred("\\b(ghost|severity|regret|engine|signature|bench)\\b", std::regex::icase);
        const std::regex sides(
            "\\b(to the|on the|at the|the) (left|right)\\b|\\b(left|right)(-hand)? (side|cane|spur|arm|post)\\b",
            std::regex::icase);
        const std::regex lados("\\b(izquierda|derecha|izquierdo|derecho)\\b", std::regex::icase);
        for (const std::string_view language : languages)
            for (const auto& entry : loaded(language).texts) {  // clang 14 captures no structured binding
                const std::string &key = entry.first, &text = entry.second;
                CAPTURE(key);
                CAPTURE(text);
                CHECK_FALSE(std::regex_search(text, barred));
                if (key != "error.file.neighbour-side") CHECK_FALSE(std::regex_search(text, sides));
                CHECK_FALSE(std::regex_search(text, lados));
                CHECK(text.find("  ") == std::string::npos);
                CHECK_FALSE(text.starts_with(' '));
            }
    }
    TEST_CASE("every Spanish wording is marked open until a native pruner has checked it") {
        for (const char* language : {"es", "es-ES", "es-CL"}) {
            const WordFile file = loaded(language);
            for (const auto& entry : file.texts) {
                const std::string& key = entry.first;
                if (!key.starts_with("number."))
                    CHECK_MESSAGE(std::find(file.open.begin(), file.open.end(), key) != file.open.end(), key);
            }
        }
    }
    TEST_CASE("word files keep their schema") {
        for (const std::string_view language : languages)
            CHECK(test::schema_fault("words", file_text(assets.path("words", std::string(language) + ".json"))) == "");
    }
    TEST_CASE("text is laid out by characters, not bytes") {
        CHECK(width_of("año °") == 5);
        CHECK(padded("ñ", 3) == "ñ  ");
        CHECK(padded_left("ñ", 3) == "  ñ");
        CHECK(wrapped("one two three", 8) == "one two\nthree\n");
        CHECK(hanging("- ", "one two three", 2, 8) == "- one\n  two\n  three\n");
        CHECK(table_text({{{"a", "bb"}, {"ccc", "d"}}, {false, true}}) == "a    bb\nccc   d\n");
    }
}
