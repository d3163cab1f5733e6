// Block sheets: one that writes and reads back the same and makes house rules for each strength, or a refusal with its
// place.
#include "scenarios/sheet/block_sheet.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
    const auto sheet = sheet::read_block_sheet(fuzz::text(data, size), "sheet.json");
    if (!sheet) {
        SPURWRIGHT_CHECK(sheet.error().where.source, ==, std::string("sheet.json"));
        return 0;
    }
    const std::string printed = sheet::print_block_sheet(*sheet);
    const auto again = sheet::read_block_sheet(printed, "again.json");
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK((*again == *sheet), ==, true);
    SPURWRIGHT_CHECK(sheet::print_block_sheet(*again), ==, printed);
    for (const sheet::Strength strength : {sheet::Strength::weak, sheet::Strength::middle, sheet::Strength::strong}) {
        const auto house = sheet::house_rules_of(*sheet, strength, "sheet.json", assets);
        if (house) SPURWRIGHT_CHECK(rules::first_fault(house->rules).has_value(), ==, false);
    }
    return 0;
}
