// Varieties of one's own: one whose values lie in the ranges of the constants' table and that writes and reads back the
// same, or a refusal with its place.
#include "scenarios/io/variety_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto variety = io::read_variety(fuzz::text(data, size), "variety.json");
    if (!variety) {
        SPURWRIGHT_CHECK(variety.error().where.source, ==, std::string("variety.json"));
        return 0;
    }
    for (const growth::VarietyField& field : growth::variety_fields())
        for (const growth::ConstantRow& row : growth::constant_rows())
            if (row.name == field.constant) {
                SPURWRIGHT_CHECK(((*variety).get()->*field.value).value, >=, row.low);
                SPURWRIGHT_CHECK(((*variety).get()->*field.value).value, <=, row.high);
            }
    const std::string printed = io::print_variety(**variety);
    const auto again = io::read_variety(printed, "again.json");
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK(io::print_variety(**again), ==, printed);
    return 0;
}
