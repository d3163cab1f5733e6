// Block sheets: read, written, refused by key and line, and what they make of the house rules.
#include <doctest/doctest.h>

#include "scenarios/commands/error_text.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/sheet/sheet_page.h"
#include "scenarios/words/load_words.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using namespace spurwright::sheet;

namespace {

const io::Assets sheet_assets(SPURWRIGHT_SOURCE "/assets");

BlockSheet sheet_example() {
    auto sheet = load_block_sheet(SPURWRIGHT_SOURCE "/assets/block-sheets/example.json");
    REQUIRE(sheet.has_value());
    return *std::move(sheet);
}

std::string with(const std::string& more) {
    return "{\"kind\": \"spurwright-block-sheet\", \"version\": 1, \"block\": \"Low \\\"<end>\\\"\",\n\"buds\": {\"weak\": 10, \"middle\": 20, "
           "\"strong\": 30}" +
           more + "}";
}

std::string sheet_refused(const std::string& text) {
    static const auto words = words::load_words(sheet_assets, "en");
    const auto sheet = read_block_sheet(text, "s.json");
    if (sheet) return "read";
    return commands::where_text(sheet.error(), *words) + ": " + commands::sentence_of(sheet.error(), *words);
}

} // namespace

TEST_SUITE("scenarios/block-sheet") {
    TEST_CASE("the example keeps its schema, and what is written reads back the same") {
        const BlockSheet sheet = sheet_example();
        CHECK(sheet.block == "Lower terrace");
        CHECK(sheet.buds == std::array{16, 27, 34});
        const std::string written = print_block_sheet(sheet);
        CHECK(test::schema_fault("block-sheet-1", written) == "");
        const auto again = read_block_sheet(written, "again.json");
        REQUIRE(again.has_value());
        CHECK(*again == sheet);
        CHECK(print_block_sheet(*again) == written);
        const auto short_one = read_block_sheet(with(""), "s.json");
        REQUIRE(short_one.has_value());
        CHECK(read_block_sheet(print_block_sheet(*short_one), "s.json") == *short_one);
    }
    TEST_CASE("each line of the sheet sets its rule, by the strength of the vine") {
        auto read = read_block_sheet(with(", \"thickness\": [7, 10], \"heights\": [60, 180], \"gap\": [40, 120], \"head\": \"slow-arms\", \"no_neighbour\": "
                                          "\"run-on\", \"spare\": 1, \"kicker\": {\"wanted\": 2, \"until\": \"20 May\"}, \"spurs\": {\"buds\": 3}, \"tie\": {\"wraps\": 2}"),
                                     "s.json");
        REQUIRE(read.has_value());
        for (std::size_t i = 0; i < 3; ++i) {
            const auto file = house_rules_of(*read, static_cast<Strength>(i), "s.json", sheet_assets);
            REQUIRE(file.has_value());
            const rules::HouseRules& house = file->rules;
            CHECK(house.bud_load.target == 10 * static_cast<int>(i + 1));
            CHECK(house.cane_diameter.band == rules::Band<Length>{{{7'000}, {10'000}}, {{5'400}, {12'000}}});
            CHECK(house.origin_height.band.full == rules::Range<Length>{{60'000}, {180'000}});
            CHECK(house.cane_reach.free_wire.full == rules::Range<Length>{{40'000}, {120'000}});
            CHECK(house.cane_reach.no_neighbour == rules::NoNeighbour::run_on);
            CHECK(house.origin_distance.measure == rules::OriginMeasure::creep);
            CHECK(house.spur_buds.full.high.count == 3);
            CHECK(house.standing.spares == 1);
            CHECK(house.standing.kickers == 2);
            CHECK(house.tying.wraps.high.count == 5);
            CHECK(house.set_by_house[rules::index_of(rules::RuleName::bud_load)]);
            // As a file of house rules they are the same.
            const std::string text = io::print_house_rules(*file);
            CHECK(test::schema_fault("house-rules-1", text) == "");
            const auto again = io::read_house_rules(text, "h.json", sheet_assets);
            REQUIRE(again.has_value());
            CHECK(rules::rule_set_hash(again->rules) == rules::rule_set_hash(house));
        }
    }
    TEST_CASE("a sheet of a single cane and one of a cordon: what each says, and what it sets") {
        const auto single = load_block_sheet(SPURWRIGHT_SOURCE "/assets/block-sheets/single-cane.json");
        const auto cordon = load_block_sheet(SPURWRIGHT_SOURCE "/assets/block-sheets/cordon.json");
        REQUIRE((single.has_value() && cordon.has_value()));
        CHECK(single->canes == 1);
        CHECK(single->spurs == 1);
        CHECK(cordon->canes == 0);
        for (const auto* sheet : {&*single, &*cordon}) {
            const std::string written = print_block_sheet(*sheet);
            CHECK(test::schema_fault("block-sheet-1", written) == "");
            CHECK(read_block_sheet(written, "s.json") == *sheet);
        }
        const auto one = house_rules_of(*single, Strength::strong, "s.json", sheet_assets);
        REQUIRE(one.has_value());
        CHECK(one->rules.bud_load.target == 16);
        CHECK(one->rules.cane_diameter.band.full == rules::Range<Length>{{7'000}, {11'000}});
        BlockSheet wide = *cordon;
        wide.apart = {{100'000}, {240'000}};
        wide.spur_buds = 3;
        const auto row = house_rules_of(wide, Strength::middle, "s.json", sheet_assets);
        REQUIRE(row.has_value());
        const rules::HouseRules& house = row->rules;
        CHECK(row->base == "spur-cordon");
        CHECK(house.bud_load.target == 24);
        CHECK(house.spur_buds.full == rules::CountRange{{3}, {3}});
        CHECK(house.spur_place.apart == rules::Band<Length>{{{100'000}, {240'000}}, {{50'000}, {240'000}}});
        CHECK(house.set_by_house[rules::index_of(rules::RuleName::spur_place)]);
        CHECK_FALSE(house.set_by_house[rules::index_of(rules::RuleName::tying)]);
        const std::string text = io::print_house_rules(*row);
        CHECK(test::schema_fault("house-rules-1", text) == "");
        const auto again = io::read_house_rules(text, "h.json", sheet_assets);
        REQUIRE(again.has_value());
        CHECK(rules::rule_set_hash(again->rules) == rules::rule_set_hash(house));
        // On the wall a cordon's sheet says nothing of canes, and no line is empty.
        for (const char* language : {"en", "es"}) {
            const auto words = words::load_words(sheet_assets, language);
            const auto lines = sheet_lines(*cordon, *words), of_one = sheet_lines(*single, *words);
            CHECK(lines.size() < of_one.size());
            for (const auto* all : {&lines, &of_one})
                for (const SheetLine& line : *all) CHECK((!line.value.empty() && line.value.find('[') == std::string::npos));
        }
    }
    TEST_CASE("what cannot be used is refused with key and line") {
        CHECK(sheet_refused("{\"kind\": \"vine\", \"version\": 1}").starts_with("s.json:1:"));
        CHECK(sheet_refused("{\"kind\": \"spurwright-block-sheet\", \"version\": 2, \"block\": \"x\"}").find("2") != std::string::npos);
        CHECK(sheet_refused("{\"kind\": \"spurwright-block-sheet\", \"version\": 1, \"block\": \"x\"}").find("buds") != std::string::npos);
        for (const char* more : {"\"thickness\": [12, 8]", "\"thickness\": [8]", "\"thickness\": 8", "\"gap\": [-5, 8]", "\"head\": \"general\"",
                                 "\"system\": \"head-canes\"", "\"canes\": 3", "\"apart\": [76, 152]", "\"system\": \"one-cane\", \"canes\": 2",
                                 "\"system\": \"one-cane\", \"spurs\": {\"wanted\": 2}", "\"system\": \"cordon\", \"canes\": 2", "\"system\": \"cordon\", \"tie\": {}",
                                 "\"system\": \"cordon\", \"spurs\": {\"wanted\": 8}", "\"system\": \"cordon\", \"apart\": [152, 76]", "\"system\": \"cordon\", \"head\": \"close-head\"", "\"spare\": 3", "\"tie\": {\"wraps\": 0.3}", "\"tie\": {\"wraps\": 9}",
                                 "\"colour\": 1", "\"spurs\": {\"buds\": 4}", "\"spacing\": 1e99", "\"kicker\": {\"wanted\": NaN}"}) {
            CAPTURE(more);
            CHECK(sheet_refused(with(",\n" + std::string(more))).starts_with("s.json:3"));
        }
        std::string falling = with("");
        falling.replace(falling.find("30"), 2, "15");
        CHECK(sheet_refused(falling).find("rise from weak to strong") != std::string::npos);
        const auto crossed = read_block_sheet(with(", \"gap\": [0, 10], \"heights\": [5, 10]"), "s.json");
        REQUIRE(crossed.has_value());
        CHECK(house_rules_of(*crossed, Strength::weak, "s.json", sheet_assets).has_value());
    }
    TEST_CASE("the page holds every line in two languages, and no text is taken for markup") {
        const auto sheet = read_block_sheet(with(", \"notes\": \"mind <the> drip line & posts\", \"kicker\": {\"wanted\": 1}"), "s.json");
        REQUIRE(sheet.has_value());
        const auto english = words::load_words(sheet_assets, "en"), spanish = words::load_words(sheet_assets, "es");
        REQUIRE((english.has_value() && spanish.has_value()));
        const std::string page = sheet_page(*sheet, *english, *spanish);
        CHECK(page.find("<the>") == std::string::npos);
        CHECK(page.find("mind &lt;the&gt; drip line &amp; posts") != std::string::npos);
        CHECK(page.find("Low &quot;&lt;end&gt;&quot;") != std::string::npos);
        const std::size_t body = page.find("<body>");
        CHECK(page.find('[', body) == std::string::npos);
        CHECK(page.find('{', body) == std::string::npos);
        for (const auto* words : {&*english, &*spanish})
            for (const SheetLine& line : sheet_lines(*sheet, *words))
                if (line.value.find_first_of("<&\"") == std::string::npos) {
                    CHECK(page.find(line.what) != std::string::npos);
                    CHECK(page.find(line.value) != std::string::npos);
                }
        CHECK(sheet_lines(*sheet, *english).size() == sheet_lines(*sheet, *spanish).size());
    }
}
