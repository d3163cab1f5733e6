// Comma-separated values in and out: every separator, every end of line, every fault by its line.
#include <doctest/doctest.h>

#include <rapidcheck.h>

#include "scenarios/io/csv.h"

using namespace spurwright;
using io::CsvReader;
using io::CsvRow;

namespace {

// Every row as its line and its cells, or its fault.
std::string table_told(std::string_view text) {
    auto reader = CsvReader::of(text, "x.csv");
    if (!reader) return std::to_string(reader.error().where.line) + " " + std::string(reader.error().key.name);
    std::string told;
    for (const auto& heading : reader->headings()) told += "<" + heading + ">";
    CsvRow row;
    while (true) {
        const auto there = reader->next(row);
        if (!there) return told + " " + std::to_string(there.error().where.line) + " " + std::string(there.error().key.name);
        if (!*there) return told;
        told += " " + std::to_string(row.line);
        if (row.fault) told += std::string(row.fault->name);
        for (const auto& cell : row.cells) told += "[" + cell + "]";
    }
}

} // namespace

TEST_SUITE("records/csv") {
    TEST_CASE("commas, semicolons and tabs; LF and CRLF; a byte order mark; the last line without an end") {
        for (const char* text : {"a,b\n1,2\n", "a;b\n1;2\n", "a\tb\r\n1\t2\r\n", "\xEF\xBB\xBF" "a,b\n1,2", "A , B\n 1 , 2 \n"}) {
            CAPTURE(text);
            CHECK(table_told(text) == "<a><b> 2[1][2]");
        }
    }
    TEST_CASE("RFC 4180: quotation marks hold separators, ends of lines and doubled marks; lines are counted through them") {
        CHECK(table_told("a,b\n\"x,\"\"y\"\"\nz\",2\n3,4\n") == "<a><b> 2[x,\"y\"\nz][2] 4[3][4]");
        CHECK(table_told("a,b\n\"\",\"  \"\n") == "<a><b> 2[][  ]");
    }
    TEST_CASE("blank rows are passed over and counted") { CHECK(table_told("a,b\n\n,\n1,2\n") == "<a><b> 4[1][2]"); }
    TEST_CASE("a row that is not well formed is named, and those after it are read") {
        CHECK(table_told("a,b\n\"x\"y,2\n3,4\n").find("3[3][4]") != std::string::npos);
        CHECK(table_told("a,b\n\"x\"y,2\n3,4\n").find("2error.csv.after-quote") != std::string::npos);
        CHECK(table_told("a,b\n5\" pipe,2\n3,4\n").find("2error.csv.quote-inside") != std::string::npos);
        CHECK(table_told("a,b\n1,2\n\"open,2\n3,4\n") == "<a><b> 2[1][2] 3 error.csv.open-quote");
    }
    TEST_CASE("what cannot be read at all is refused with its line") {
        CHECK(table_told("") == "1 error.csv.no-heading");
        CHECK(table_told("\n1\n") == "1 error.csv.no-heading");
        CHECK(table_told("a,,b\n") == "1 error.csv.empty-heading");
        CHECK(table_told("a,A\n") == "1 error.csv.heading-twice");
        CHECK(table_told(std::string_view("\xFF\xFE" "a\0", 4)) == "1 error.csv.not-utf8");
        CHECK(table_told(std::string_view("a,b\n1,\0\n", 8)) == "2 error.csv.zero");
    }
    TEST_CASE("injection guard: what a table program takes for a formula is written with ' before it, and read back without") {
        for (const char* text : {"=1+1", "+1", "-1", "@x", "\tx", "\rx", "=cmd|' /C calc'!A0"}) {
            CAPTURE(text);
            const std::string cell = io::csv_text(text);
            CHECK((cell.starts_with("'") || cell.starts_with("\"'")));
            CHECK(io::looks_like_formula(text));
            CHECK(io::without_guard("'" + std::string(text)) == text);
        }
        CHECK(io::csv_text("O'Brien") == "O'Brien");
        CHECK(io::without_guard("'tis") == "'tis");
    }
    TEST_CASE("whatever text is written is read back") {
        CHECK(rc::check([](const std::vector<std::string>& cells) {
            std::string text = "h0,h1\r\n", wanted;
            for (std::string cell : cells) {
                std::erase(cell, '\0');
                text += "x," + io::csv_text(cell) + "\r\n";
            }
            auto reader = CsvReader::of(text, "x.csv");
            RC_ASSERT(reader.has_value());
            CsvRow row;
            for (std::string cell : cells) {
                std::erase(cell, '\0');
                RC_ASSERT(*reader->next(row));
                RC_ASSERT(!row.fault);
                RC_ASSERT(row.cells.size() == 2u);
                RC_ASSERT((row.cells[1] == cell || io::without_guard(row.cells[1]) == cell));
            }
            RC_ASSERT(!*reader->next(row));
        }));
    }
}
