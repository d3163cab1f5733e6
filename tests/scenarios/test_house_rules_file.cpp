// House rules as files: the shipped sets, a house's own, refusals by key and line.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "scenarios/commands/error_text.h"
#include "scenarios/io/house_rules_file.h"
#include "scenarios/words/load_words.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using namespace spurwright::io;

namespace {

const Assets assets(SPURWRIGHT_SOURCE "/assets");

HouseRulesFile loaded(const std::string& name) {
    auto file = load_house_rules(name, assets);
    REQUIRE_MESSAGE(file.has_value(), name);
    return *std::move(file);
}

std::string own(const std::string& rules) {
    return "{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"north-block\", \"base\": \"general\",\n "
           " \"rules\": {" +
           rules + "}}";
}

std::string refused(const std::string& text) {
    static const auto words = words::load_words(assets, "en");
    const auto file = read_house_rules(text, "h.json", assets);
    if (file) return "read";
    return commands::where_text(file.error(), *words) + ": " + commands::sentence_of(file.error(), *words);
}

} // namespace

TEST_SUITE("scenarios/house-rules-file") {
    TEST_CASE("the general set equals the shipped values, to the last key") {
        const HouseRulesFile general = loaded("general");
        CHECK(general.rules == rules::HouseRules{});
        HouseRulesFile shipped;
        shipped.name = general.name;
        shipped.title = general.title;
        std::ifstream file(assets.path("house-rules", "general.json"));
        std::ostringstream text;
        text << file.rdbuf();
        CHECK(print_house_rules(shipped) == text.str());
        CHECK(test::schema_fault("house-rules-1", text.str()) == "");
    }
    TEST_CASE("close head keeps the general numbers, slow arms changes distance and wounds") {
        CHECK(loaded("close-head").rules == rules::HouseRules{});
        const rules::HouseRules slow = loaded("slow-arms").rules;
        CHECK(slow.origin_distance.measure == rules::OriginMeasure::creep);
        CHECK(slow.origin_distance.arm_to == Length{400'000});
        CHECK(slow.wound_size.half_from == Length{10'000});
        CHECK(slow.wound_size.none_from == Length{20'000});
        rules::HouseRules back = slow;
        back.origin_distance = {};
        back.wound_size = {};
        CHECK(back == rules::HouseRules{});
    }
    TEST_CASE("sets by vigour move the bands of cane thickness alone; cool sites with small canes take the low one") {
        for (const auto& [name, low, high] : {std::tuple{"low-vigour", 7'000, 10'000}, {"high-vigour", 9'000, 13'000}, {"cool-sites", 7'000, 10'000}}) {
            rules::HouseRules set = loaded(name).rules;
            const rules::HouseRules general;
            CHECK(set.cane_diameter.band.full == rules::Range<Length>{{low}, {high}});
            // The part bands move with them.
            CHECK(set.cane_diameter.band.full.low - set.cane_diameter.band.half.low == Length{1'600});
            CHECK(set.cane_diameter.band.half.high - set.cane_diameter.band.full.high == Length{2'000});
            CHECK_FALSE(rules::first_fault(set));
            set.cane_diameter = general.cane_diameter;
            CHECK(set == general);
        }
    }
    TEST_CASE("the set for cordons wants two buds and spurs that stand up, and no more than that") {
        rules::HouseRules set = loaded("spur-cordon").rules;
        CHECK(set.spur_buds.full == rules::CountRange{{2}, {2}});
        CHECK(set.spur_direction.upright);
        CHECK(set.weight(rules::RuleName::spur_direction) == 30);
        CHECK_FALSE(rules::first_fault(set));
        set.spur_buds = {};
        set.spur_direction = {};
        set.weighed[rules::index_of(rules::RuleName::spur_direction)] = {0, false};
        CHECK(set == rules::HouseRules{});
    }
    TEST_CASE("every shipped set names itself") {
        for (const std::string_view name : shipped_house_sets) CHECK(loaded(std::string(name)).name == name);
    }
    TEST_CASE("a house's own values lie over its base and are marked as the house's") {
        const auto file = read_house_rules(own("\"cane-diameter\": {\"full\": [7.0, 10.0]}, \"bud-load\": {\"target\": "
                                               "{\"value\": 28, \"why\": \"weak row\"}}, "
                                               "\"tying\": {\"weight\": 30, \"wraps\": [0.5, 2]}"),
                                           "h.json", assets);
        REQUIRE(file);
        CHECK(file->rules.cane_diameter.band.full.low == Length{7'000});
        CHECK(file->rules.cane_diameter.band.full.high == Length{10'000});
        CHECK(file->rules.cane_diameter.band.half.low == Length{6'400});
        CHECK(file->rules.bud_load.target == 28);
        CHECK(file->rules.tying.wraps.low.count == 1);
        CHECK(file->rules.tying.wraps.high.count == 4);
        CHECK(file->rules.set_by_house[rules::index_of(rules::RuleName::cane_diameter)]);
        CHECK(file->rules.set_by_house[rules::index_of(rules::RuleName::tying)]);
        CHECK_FALSE(file->rules.set_by_house[rules::index_of(rules::RuleName::end_cut)]);
        CHECK(file->own ==
              std::vector<std::string>{"cane-diameter.full", "bud-load.target", "tying.weight", "tying.wraps"});
        const std::string written = print_house_rules(*file);
        const auto again = read_house_rules(written, "again.json", assets);
        REQUIRE(again);
        CHECK(again->rules == file->rules);
        CHECK(print_house_rules(*again) == written);
        CHECK(test::schema_fault("house-rules-1", written) == "");
    }
    TEST_CASE("open ends, words, yes and no, null") {
        const auto file = read_house_rules(
            own("\"origin-height\": {\"half\": [10, null]}, \"cane-reach\": {\"no_neighbour\": \"run-on\"}, "
                "\"suckers\": {\"renewal\": true}, \"origin-distance\": {\"arm_to\": null}"),
            "h.json", assets);
        REQUIRE(file);
        CHECK(file->rules.origin_height.band.half.high.count == rules::open_end);
        CHECK(file->rules.cane_reach.no_neighbour == rules::NoNeighbour::run_on);
        CHECK(file->rules.suckers.renewal);
    }
    TEST_CASE("what cannot be used is refused in one sentence with key and line") {
        CHECK(refused(own("\"cane-diametre\": {}")) == "h.json:2:30: There is no rule \"cane-diametre\".");
        CHECK(refused(own("\"cane-diameter\": {\"ful\": [7, 10]}")) ==
              "h.json:2:38: The rule cane-diameter has no value \"ful\".");
        CHECK(refused(own("\"cane-diameter\": {\"full\": 7}")) ==
              "h.json:2:39: \"cane-diameter.full\" is a list of two, the lower first.");
        CHECK(refused(own("\"cane-diameter\": {\"full\": [5, 10]}")) ==
              "h.json:2:39: cane-diameter.full: the bands cross; the half band must lie around the full one.");
        CHECK(refused(own("\"bud-load\": {\"target\": -3}")).find("bud-load.target is below zero") !=
              std::string::npos);
        CHECK(refused(own("\"bud-load\": {\"target\": 27.5}")) ==
              "h.json:2:36: \"bud-load.target\" must be a whole number, not 27.5.");
        CHECK(refused(own("\"cane-health\": {\"ripe_share\": \"much\"}")) ==
              "h.json:2:43: \"cane-health.ripe_share\" must be a number, but is a text.");
        CHECK(refused(own("\"wood-age\": {\"on\": \"yes\"}")) == "h.json:2:32: \"wood-age.on\" must be true or false.");
        CHECK(refused(own("\"origin-distance\": {\"measure\": \"far\"}")) ==
              "h.json:2:44: \"origin-distance.measure\" is \"far\"; it must be one of: distance, creep.");
        CHECK(refused(own("\"tying\": {\"wraps\": [0, 0.7]}")) == "h.json:2:36: Wraps go from 0 to 3 in halves.");
        CHECK(refused("{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"x\", \"rules\": {}}")
                  .find("no base is named") != std::string::npos);
        CHECK(refused("{\"kind\": \"spurwright-house-rules\", \"version\": 2}")
                  .find("this program reads up to version 1") != std::string::npos);
        CHECK(refused("{\"kind\": \"spurwright-vine\", \"version\": 1}") ==
              "h.json:1:10: The file is of kind \"spurwright-vine\", not \"spurwright-house-rules\".");
        CHECK(refused("{\"kind\": \"spurwright-house-rules\", \"version\": 1, \"name\": \"x\", \"base\": "
                      "\"../general\", \"rules\": {}}")
                  .find("is no set to build on") != std::string::npos);
    }
    TEST_CASE("weights of the rules in force may not all be nothing") {
        std::string none;
        for (const std::string_view rule : rules::rule_keys)
            none += (none.empty() ? "\"" : ", \"") + std::string(rule) + "\": {\"on\": false}";
        CHECK(refused(own(none)) != "read");
    }
}
