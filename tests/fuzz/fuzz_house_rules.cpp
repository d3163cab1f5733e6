// House rules: a set that writes and reads back the same, or a refusal.
#include "scenarios/io/house_rules_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
    const auto file = io::read_house_rules(fuzz::text(data, size), "fuzz", assets);
    if (!file) return 0;
    const std::string printed = io::print_house_rules(*file);
    const auto again = io::read_house_rules(printed, "again", assets);
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK((again->rules == file->rules), ==, true);
    SPURWRIGHT_CHECK(io::print_house_rules(*again), ==, printed);
    return 0;
}
