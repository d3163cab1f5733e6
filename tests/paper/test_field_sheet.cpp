// The field sheet of reference vines, read back by Poppler: every vine in walking order, both languages, A4.
#include <doctest/doctest.h>

#include "tests/cli/shed.h"

using namespace spurwright::test;

TEST_CASE("every vine stands on the sheet once, row after row, with its last weight; A4 (ISO 216: 210 x 297 mm), the same bytes each time") {
    const Shed shed;
    REQUIRE(shed.run({"demo-block"}).status == 0);
    const std::string pdf = shed.folder.file("field ñ.pdf"), again = shed.folder.file("again.pdf");
    const Ran ran = shed.run({"book", "sheet", "demo-invented", "-o", pdf, "--json"});
    CHECK_MESSAGE(ran.status == 0, ran.err);
    CHECK(schema_fault("verb-book-sheet", ran.out) == "");
    CHECK(ran.out.find("\"vines\": 60") != std::string::npos);
    const std::string info = run_program_of("/usr/bin/pdfinfo", {pdf}).out;
    CHECK(info.find("(A4)") != std::string::npos);
    CHECK(info.find("Pages:           3\n") != std::string::npos);
    const std::string text = run_program_of("/usr/bin/pdftotext", {"-layout", pdf, "-"}).out;
    std::size_t at = 0;
    int vines = 0;
    for (int row = 1; row <= 3; ++row)
        for (int place = 1; place <= 40; ++place) {
            const std::size_t found = text.find(" " + std::to_string(100 * row + place) + " ", at);
            if (found == std::string::npos) continue; // a gap of the row
            ++vines;
            at = found;
        }
    CHECK(vines == 60);
    for (const char* said : {"Reference vines, in walking order", "Parras de referencia", "weight", "peso"}) CHECK_MESSAGE(text.find(said) != std::string::npos, std::string(said));
    shed.run({"book", "sheet", "demo-invented", "-o", again});
    CHECK(file_text(again) == file_text(pdf));
    CHECK(shed.run({"book", "sheet", "demo-invented", "-o", again, "--row", "2", "--language", "es-CL"}).status == 0);
    CHECK(run_program_of("/usr/bin/pdfinfo", {again}).out.find("Pages:           1\n") != std::string::npos);
}

TEST_CASE("a block without vines and a row that is not there are refused") {
    const Shed shed;
    const std::string pdf = shed.folder.file("f.pdf");
    CHECK(shed.run({"book", "sheet", "north", "-o", pdf}).status == 2);
    REQUIRE(shed.run({"book", "block", "north", "--spacing", "1.8m"}).status == 0);
    CHECK(shed.run({"book", "sheet", "north", "-o", pdf}).err.find("No vine of \"north\"") != std::string::npos);
    CHECK(shed.run({"book", "sheet", "north", "-o", pdf, "--row", "7"}).err.find("row \"7\"") != std::string::npos);
}
