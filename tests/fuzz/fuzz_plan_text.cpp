// Plan text: whatever the bytes, a plan or a refusal with its place; printing a plan read is a fixed point.
#include "sim/core/check.h"
#include "sim/pruning/plan_text.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto plan = parse_plan(fuzz::text(data, size));
    if (!plan) {
        SPURWRIGHT_CHECK(plan.error().where.source, ==, std::string("plan"));
        return 0;
    }
    const std::string printed = print_plan(*plan);
    const auto again = parse_plan(printed);
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK((*again == *plan), ==, true);
    SPURWRIGHT_CHECK(print_plan(*again), ==, printed);
    return 0;
}
