// Sites of one's own: one that growth takes and that writes and reads back the same, or a refusal with its place.
#include "scenarios/io/site_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto site = io::read_site(fuzz::text(data, size), "site.json");
    if (!site) {
        SPURWRIGHT_CHECK(site.error().where.source, ==, std::string("site.json"));
        return 0;
    }
    SPURWRIGHT_CHECK(growth::check(site->vineyard).has_value(), ==, true);
    for (const weather::ClimateField& field : weather::climate_fields()) {
        SPURWRIGHT_CHECK(site->climate.get()->*field.value, >=, field.low);
        SPURWRIGHT_CHECK(site->climate.get()->*field.value, <=, field.high);
    }
    const std::string printed = io::print_site(*site);
    const auto again = io::read_site(printed, "again.json");
    SPURWRIGHT_CHECK(again.has_value(), ==, true);
    SPURWRIGHT_CHECK(io::print_site(*again), ==, printed);
    return 0;
}
