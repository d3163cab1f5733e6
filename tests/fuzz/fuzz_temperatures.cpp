// Temperature files: whatever the bytes, days in order inside the range, or a refusal with its line.
#include "scenarios/io/temperature_file.h"
#include "sim/core/check.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto file = io::read_temperatures(fuzz::text(data, size), "days.csv");
    if (!file) {
        SPURWRIGHT_CHECK(file.error().where.source, ==, std::string("days.csv"));
        SPURWRIGHT_CHECK(file.error().where.line, >=, 1);
        SPURWRIGHT_CHECK(file.error().where.line, <=, io::most_temperature_lines + 1);
        return 0;
    }
    SPURWRIGHT_CHECK(file->mean_c.size(), >, std::size_t{0});
    for (std::size_t i = 0; i < file->mean_c.size(); ++i) {
        SPURWRIGHT_CHECK(file->lowest_c[i], >=, io::coldest_c);
        SPURWRIGHT_CHECK(file->highest_c[i], <=, io::warmest_c);
        SPURWRIGHT_CHECK(file->mean_c[i], >=, file->lowest_c[i]);
        SPURWRIGHT_CHECK(file->mean_c[i], <=, file->highest_c[i]);
    }
    for (const bool southern : {false, true}) {
        const auto seasons = io::seasons_of(*file, southern, "days.csv");
        if (seasons) SPURWRIGHT_CHECK((*seasons)[0].mean.size(), ==, static_cast<std::size_t>(weather::season_days));
    }
    return 0;
}
