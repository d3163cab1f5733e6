// Vine files: a vine that writes and reads back to the same hash and bytes, or a refusal.
#include "scenarios/io/vine_file.h"
#include "sim/core/check.h"
#include "sim/vine/canonical_text.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto file = io::read_vine_file(fuzz::text(data, size), "fuzz");
    if (!file) return 0;
    const std::string printed = io::print_vine_file(*file);
    const auto again = io::read_vine_file(printed, "again");
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK(canonical_text(again->vine), ==, canonical_text(file->vine));
    SPURWRIGHT_CHECK(io::print_vine_file(*again), ==, printed);
    return 0;
}
