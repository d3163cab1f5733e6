// Reports beside a plan: a weight that a scale can show, or a refusal with its place.
#include "scenarios/io/report_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto file = io::read_report(fuzz::text(data, size), "report.json");
    if (!file) {
        SPURWRIGHT_CHECK(file.error().where.source, ==, std::string("report.json"));
        return 0;
    }
    SPURWRIGHT_CHECK(file->report.weight.count, >=, 0);
    if (file->counted_buds) SPURWRIGHT_CHECK(*file->counted_buds, >=, std::int64_t{0});
    return 0;
}
