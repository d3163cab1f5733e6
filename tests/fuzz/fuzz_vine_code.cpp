// Vine codes: a site whose printed code reads back, or a refusal.
#include "sim/core/check.h"
#include "sim/vine/vine_code.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto site = read_code(fuzz::text(data, size));
    static_cast<void>(looks_like_code(fuzz::text(data, size)));
    if (!site) return 0;
    const auto again = read_code(print_code(*site));
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK((*again == *site), ==, true);
    return 0;
}
