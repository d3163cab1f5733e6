// JSON in and out: limits, places of errors, decimals.
#include <doctest/doctest.h>

#include "scenarios/io/json.h"

using namespace spurwright;
using namespace spurwright::io;

namespace {

std::string refused(std::string_view text) {
    const auto read = read_json(text, "f.json");
    if (read) return "read";
    const Error& e = read.error();
    return std::string(e.key.name) + " " + std::to_string(e.where.line) + ":" + std::to_string(e.where.column);
}

std::string nested(int levels, char open, char close) {
    return std::string(static_cast<std::size_t>(levels), open) + std::string(static_cast<std::size_t>(levels), close);
}

} // namespace

TEST_SUITE("scenarios/json") {
    TEST_CASE("values remember their line and column") {
        const auto read = read_json("{\"a\": 1,\n  \"b\": [true, null, \"x\"],\n\"c\":-2.50}", "f");
        REQUIRE(read);
        const Json* b = read->find("b");
        REQUIRE(b);
        CHECK(b->line == 2);
        CHECK(b->column == 8);
        CHECK(b->items[0].column == 9);
        CHECK(b->items[2].column == 21);
        CHECK(read->find("a")->column == 7);
        CHECK(read->find("c")->line == 3);
        CHECK(read->find("c")->column == 5);
        CHECK(read->find("c")->text == "-2.50");
        CHECK(read->find("d") == nullptr);
    }
    TEST_CASE("64 levels are read, 65 and 10,000 are refused") {
        CHECK(refused(nested(64, '[', ']')) == "read");
        CHECK(refused(nested(65, '[', ']')) == "error.json.too-deep 1:65");
        CHECK(refused(nested(10'000, '[', ']')) == "error.json.too-deep 1:65");
        std::string objects;
        for (int i = 0; i < 10'000; ++i) objects += "{\"a\":";
        CHECK(refused(objects) == "error.json.too-deep 1:321");
        CHECK(refused(std::string(2'000'000, '[')) == "error.json.too-deep 1:65");
    }
    TEST_CASE("what is no JSON, ends early or is no UTF-8 is refused with its place") {
        CHECK(refused("") == "error.json.ends-early 1:1");
        CHECK(refused("{\"a\": 1,\n\"b\": ") == "error.json.ends-early 2:6");
        CHECK(refused("{\"a\": 1,\n\"b\" 2}") == "error.json.not-json 2:5");
        CHECK(refused("{\"a\": NaN}").starts_with("error.json.not-json 1:"));
        CHECK(refused("{\"a\": Infinity}").starts_with("error.json.not-json 1:"));
        CHECK(refused("{} {}").starts_with("error.json.not-json 1:"));
        CHECK(refused("[\"a\xff\"]").starts_with("error.json.not-utf8 1:"));
        CHECK(refused("[\"a\n\"]").starts_with("error.json.not-json"));
        CHECK(refused("[1e999]").starts_with("error.json.number 1:"));
    }
    TEST_CASE("a key twice in one object is refused, in two objects read") {
        CHECK(refused("{\"a\": 1, \"b\": {\"a\": 2}}") == "read");
        CHECK(refused("{\"a\": 1, \"a\": 2}") == "error.json.twice 1:10");
    }
    TEST_CASE("more than 16 MiB is refused") {
        CHECK(refused(std::string(16 * 1024 * 1024 - 2, ' ') + "1 ") == "read");
        CHECK(refused(std::string(16 * 1024 * 1024, ' ') + "1") == "error.json.too-large 0:0");
    }
    TEST_CASE("more than three million values are refused") {
        std::string many = "[0";
        for (int i = 0; i < 3'000'000; ++i) many += ",0";
        CHECK(refused(many + "]").starts_with("error.json.too-many 1:"));
    }
    TEST_CASE("a decimal is the nearest double times a thousand; finer than a thousandth is refused") {
        std::int64_t count = 0;
        CHECK(read_decimal("12.4", 3, count) == Decimal::fine);
        CHECK(count == 12'400);
        CHECK(read_decimal("0.1", 3, count) == Decimal::fine);
        CHECK(count == 100);
        CHECK(read_decimal("1e-3", 3, count) == Decimal::fine);
        CHECK(count == 1);
        CHECK(read_decimal("-1234.567", 3, count) == Decimal::fine);
        CHECK(count == -1'234'567);
        CHECK(read_decimal("12.3456", 3, count) == Decimal::too_fine);
        CHECK(read_decimal("1e10", 3, count) == Decimal::too_large);
        CHECK(read_decimal("1e999", 3, count) == Decimal::too_large);
        CHECK(read_decimal("nan", 3, count) == Decimal::not_a_number);
        CHECK(read_decimal("inf", 3, count) == Decimal::not_a_number);
        CHECK(read_decimal("", 3, count) == Decimal::not_a_number);
    }
    TEST_CASE("every micrometre up to a metre and back is itself") {
        for (std::int64_t um = -1'000; um <= 1'000'000; um += 7) {
            std::int64_t count = 0;
            REQUIRE(read_decimal(Json::decimal(um, 3).text, 3, count) == Decimal::fine);
            REQUIRE(count == um);
        }
    }
    TEST_CASE("printing: short things on one line, long ones spread, bytes that are no text replaced") {
        Json o = Json::object();
        o.set("a", Length{12'400});
        Json list = Json::list();
        for (int i = 0; i < 40; ++i) list.push(i);
        o.set("list", std::move(list));
        o.set("bad", std::string("x\xff\"\n"));
        const std::string text = print_json(o);
        CHECK(text.starts_with("{\n  \"a\": 12.4,\n  \"list\": [\n    0,\n"));
        CHECK(text.find("\"x\xEF\xBF\xBD\\\"\\n\"") != std::string::npos);
        CHECK(text.ends_with("}\n"));
        CHECK(print_json(*read_json(text, "f")) == text);
        CHECK(print_json_line(Json::decimal(-5, 3)) == "-0.005");
        CHECK(print_json_line(Json::decimal(50, 1)) == "5");
        CHECK(print_json_line(Json::number(0.12345, 3)) == "0.123");
    }
}
