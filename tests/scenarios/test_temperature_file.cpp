// Own daily temperatures: what is read, and what is refused with its line.
#include <doctest/doctest.h>

#include <cstdio>

#include "scenarios/io/safe_file.h"
#include "scenarios/io/temperature_file.h"

using namespace spurwright;

namespace {

std::string key_of(const std::string& text, int line) {
    const auto file = io::read_temperatures(text, "t.csv");
    if (file) return "";
    CHECK(file.error().where.source == "t.csv");
    CHECK(file.error().where.line == line);
    CHECK(file.error().fault == Fault::bad_file);
    return std::string(file.error().key.name);
}

// So many days from a date of 2018 on, the mean rising a hundredth a day.
std::string days_from(std::chrono::sys_days day, int count) {
    std::string text = "date,tmin_c,tmax_c\n";
    for (int i = 0; i < count; ++i, day += std::chrono::days{1}) {
        const std::chrono::year_month_day d{day};
        char line[80];
        std::snprintf(line, sizeof line, "%04d-%02u-%02u,%.2f,%.2f\n", static_cast<int>(d.year()),
                      static_cast<unsigned>(d.month()), static_cast<unsigned>(d.day()), 0.01 * (i % 1000),
                      10 + 0.01 * (i % 1000));
        text += line;
    }
    return text;
}

const std::chrono::sys_days september{std::chrono::year{2018} / 9 / 1};

} // namespace

TEST_SUITE("io/temperatures") {
    TEST_CASE("days are read; the mean is half the sum of lowest and highest unless it is told") {
        const auto three =
            io::read_temperatures("date,tmin_c,tmax_c\r\n2019-02-28,-1.5,8\r\n2019-03-01,0,10.5\r\n", "t");
        REQUIRE(three.has_value());
        CHECK(three->mean_c == std::vector<double>{3.25, 5.25});
        CHECK(three->lowest_c == std::vector<double>{-1.5, 0});
        const auto four = io::read_temperatures("\xef\xbb\xbf"
                                                "date,tmin_c,tmax_c,tmean_c\n2020-02-29, 1, 9, 4\n2020-03-01,1,9,6",
                                                "t");
        REQUIRE(four.has_value());
        CHECK(four->mean_c == std::vector<double>{4, 6});
    }
    TEST_CASE("whole seasons are cut out, from 7 September, in the south from 8 March") {
        const auto file = io::read_temperatures(days_from(september, 900), "t");
        REQUIRE(file.has_value());
        const auto north = io::seasons_of(*file, false, "t"), south = io::seasons_of(*file, true, "t");
        REQUIRE(north.has_value());
        REQUIRE(south.has_value());
        CHECK(north->size() == 2);
        CHECK(south->size() == 1);
        CHECK((*north)[0].mean.size() == weather::season_days);
        CHECK((*north)[0].lowest[0] == doctest::Approx(0.06));
        CHECK((*north)[1].lowest[0] == doctest::Approx(0.06 + 3.65));
        const auto none = io::seasons_of(*io::read_temperatures(days_from(september, 420), "t"), false, "t");
        REQUIRE_FALSE(none.has_value());
        CHECK(none.error().key.name == "error.temperatures.no-season");
    }
    TEST_CASE("gaps, days twice and backwards are refused with their line") {
        const std::string head = "date,tmin_c,tmax_c\n2019-01-01,1,2\n2019-01-02,1,2\n";
        CHECK(key_of(head + "2019-01-04,1,2\n", 4) == "error.temperatures.gap");
        CHECK(key_of(head + "2019-01-02,1,2\n", 4) == "error.temperatures.back");
        CHECK(key_of(head + "2018-01-02,1,2\n", 4) == "error.temperatures.back");
        CHECK(key_of(head + "\n2019-01-03,1,2\n", 4) == "error.temperatures.columns");
        CHECK(key_of(head + "2019-02-30,1,2\n", 4) == "error.temperatures.date");
        CHECK(key_of(head + "3 January,1,2\n", 4) == "error.temperatures.date");
    }
    TEST_CASE("wrong units and headings, text for numbers and impossible values are refused") {
        const std::string head = "date,tmin_c,tmax_c\n";
        CHECK(key_of("date,tmin_f,tmax_f\n2019-01-01,30,40\n", 1) == "error.temperatures.fahrenheit");
        CHECK(key_of("day,low,high\n2019-01-01,30,40\n", 1) == "error.temperatures.heading");
        CHECK(key_of("2019-01-01,30,40\n", 1) == "error.temperatures.heading");
        CHECK(key_of(head + "2019-01-01,70,95\n", 2) == "error.temperatures.range");
        CHECK(key_of(head + "2019-01-01,nan,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,inf,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,1e999,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,cold,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,1.5 C,5\n", 2) == "error.temperatures.number");
        CHECK(key_of(head + "2019-01-01,6,5\n", 2) == "error.temperatures.order");
        CHECK(key_of("date,tmin_c,tmax_c,tmean_c\n2019-01-01,1,5,6\n", 2) == "error.temperatures.order");
        CHECK(key_of(head + "2019-01-01,1\n", 2) == "error.temperatures.columns");
        CHECK(key_of(head + "2019-01-01,1,2,3\n", 2) == "error.temperatures.columns");
        CHECK(key_of("", 1) == "error.temperatures.empty");
        CHECK(key_of(head, 1) == "error.temperatures.empty");
    }
    TEST_CASE("no UTF-8, no text at all and endless files are refused with the line") {
        const std::string head = "date,tmin_c,tmax_c\n";
        CHECK(key_of(head + "2019-01-01,1,2\n\xff\xfe,1,2\n", 3) == "error.json.not-utf8");
        CHECK(key_of(head + "2019-01-01,1\xc3,2\n", 2) == "error.json.not-utf8");
        CHECK(key_of(head + std::string("2019-01-01,1\0,2\n", 16), 2) == "error.json.not-utf8");
        CHECK(key_of(head + std::string(300, '1') + "\n", 2) == "error.temperatures.long");
        CHECK(key_of(days_from(september, 10'000), 10'001) == "error.temperatures.endless");
        CHECK(io::read_temperatures(days_from(september, 9'999), "t").has_value());
    }
    TEST_CASE("files larger than any good one, and none at all") {
        const std::string path = "temperatures-endless.csv";
        REQUIRE(io::write_file(path, days_from(september, 400'000)).has_value());
        const auto endless = io::load_temperatures(path);
        std::remove(path.c_str());
        REQUIRE_FALSE(endless.has_value());
        CHECK(endless.error().key.name == "error.temperatures.endless");
        CHECK(endless.error().where.line == 10'001);
        CHECK(io::load_temperatures("no-such.csv").error().key.name == "error.file.no-such");
    }
}
