// The block sheet on paper, read back by another program: pdfinfo and pdftotext of Poppler, which must agree with the
// lines the sheet itself tells.
#include <doctest/doctest.h>

#include <algorithm>

#include "scenarios/sheet/sheet_page.h"
#include "scenarios/words/load_words.h"
#include "tests/cli/program.h"
#include "tests/scenarios/schema.h"

using namespace spurwright;
using namespace spurwright::test;

namespace {

const std::string example = SPURWRIGHT_SOURCE "/assets/block-sheets/example.json";
const io::Assets paper_assets(SPURWRIGHT_SOURCE "/assets");

std::string printed(const Folder& folder, const std::string& sheet, const std::string& name = "out ñ.pdf") {
    const Ran ran = run_program({"paper", sheet, "-o", folder.file(name)});
    CHECK_MESSAGE(ran.status == 0, ran.err);
    return folder.file(name);
}

std::string without_spaces(std::string text) {
    std::erase_if(text, [](char c) { return c == ' ' || c == '\n' || c == '\f' || c == '\r'; });
    return text;
}

std::string read_back(const std::string& pdf) { return without_spaces(run_program_of("/usr/bin/pdftotext", {"-raw", pdf, "-"}).out); }

} // namespace

TEST_CASE("the sheet fills one page of A4 (ISO 216: 210 x 297 mm), and Poppler reads every line back in both languages") {
    const Folder folder;
    const std::string pdf = printed(folder, example);
    const std::string info = run_program_of("/usr/bin/pdfinfo", {pdf}).out;
    CHECK(info.find("Pages:           1\n") != std::string::npos);
    CHECK(info.find("(A4)") != std::string::npos);
    const std::string text = read_back(pdf);
    const auto sheet = sheet::load_block_sheet(example);
    REQUIRE(sheet.has_value());
    for (const std::string language : {"en", "es"}) {
        const auto words = words::load_words(paper_assets, language);
        REQUIRE(words.has_value());
        for (const sheet::SheetLine& line : sheet::sheet_lines(*sheet, *words)) {
            CHECK_MESSAGE(text.find(without_spaces(line.what)) != std::string::npos, line.what);
            CHECK_MESSAGE(text.find(without_spaces(line.value)) != std::string::npos, line.value);
        }
        CHECK(text.find(without_spaces((*words)("safety.line"))) != std::string::npos);
    }
}

TEST_CASE("the same sheet gives the same bytes, and names with ñ and œ come back") {
    const Folder folder;
    auto text = file_text(example);
    const std::string name = "Cuadro de la Ñusta, cœur";
    const auto at = text.find("Lower terrace");
    REQUIRE(at != std::string::npos);
    text.replace(at, 13, name);
    (void)folder.write("sheet.json", text);
    const std::string one = printed(folder, folder.file("sheet.json")), two = printed(folder, folder.file("sheet.json"), "two.pdf");
    CHECK(file_text(one) == file_text(two));
    CHECK(read_back(one).find(without_spaces(name)) != std::string::npos);
}

TEST_CASE("what cannot be printed is refused in one sentence, and no file is left") {
    const Folder folder;
    const Ran json = run_program({"paper", example, "-o", folder.file("x.pdf"), "--json"});
    CHECK(schema_fault("verb-paper", json.out) == "");
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"paper", folder.file("no such sheet.json"), "-o", folder.file("y.pdf")}, {"paper", example}, {"paper", example, "-o", folder.file("no folder/y.pdf")}}) {
        const Ran ran = run_program(arguments);
        CHECK(ran.status == 2);
        CHECK(ran.out.empty());
        CHECK(ran.err.starts_with("spurwright: "));
        CHECK(ran.err.ends_with(".\n"));
    }
    CHECK(folder.files() == 1);
}
