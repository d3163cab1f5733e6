// The school's papers, read back by Poppler: a quiz with its key on a page of its own, and the sheets for the row.
#include <doctest/doctest.h>

#include <filesystem>
#include <sstream>

#include "scenarios/learning/success.h"
#include "scenarios/quiz/item_maker.h"
#include "tests/cli/shed.h"

using namespace spurwright;
using namespace spurwright::test;
using nlohmann::json;

namespace {

std::string page_text(const std::string& pdf, int page) {
    const std::string number = std::to_string(page);
    return run_program_of("/usr/bin/pdftotext", {"-layout", "-f", number, "-l", number, pdf, "-"}).out;
}

// Words broken over lines stand together again.
std::string on_one_line(const std::string& text) {
    std::string out;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n' || c == '\f';
        if (!blank) out += c;
        else if (!out.empty() && out.back() != ' ') out += ' ';
    }
    return out;
}

} // namespace

TEST_CASE("a quiz on paper: A4, questions in two languages with a picture each, the key on the last page alone, the same bytes each time") {
    const Shed shed;
    const std::string pdf = shed.folder.file("quiz ñ.pdf"), again = shed.folder.file("again.pdf");
    const Ran ran = shed.run({"quiz", "make", "--items", "3", "--seed", "5", "--kinds", "wood-age,pick-one,count", "--key", "-o", pdf, "--json"});
    if (ran.status == 3) {
        MESSAGE("no picture can be drawn here, so no paper: ", ran.err);
        CHECK(!std::filesystem::exists(pdf));
        return;
    }
    REQUIRE_MESSAGE(ran.status == 0, ran.err);
    CHECK(schema_fault("verb-quiz-make", ran.out) == "");
    const json said = json::parse(ran.out);
    CHECK(said["pages"] == 3);
    REQUIRE(said["items"].size() == 3);
    const std::string info = run_program_of("/usr/bin/pdfinfo", {pdf}).out;
    CHECK(info.find("(A4)") != std::string::npos);
    CHECK(info.find("Pages:           3\n") != std::string::npos);
    // A picture a question, of 150 pixels an inch or more: 515 points are 7.2 inches.
    std::istringstream images(run_program_of("/usr/bin/pdfimages", {"-list", pdf}).out);
    int pictures = 0;
    for (std::string line; std::getline(images, line);) {
        std::istringstream words(line);
        std::string page, number, kind, width;
        words >> page >> number >> kind >> width;
        if (kind == "image" && std::atoi(width.c_str()) >= 1072) ++pictures;
    }
    CHECK(pictures == 3);
    // The items are those that the same kinds, seed and rules make here; the key says what they accept.
    quiz::Served served;
    const auto items = quiz::make_items({quiz::Kind::wood_age, quiz::Kind::pick_one, quiz::Kind::count}, 3, 5, rules::HouseRules{}, served);
    REQUIRE(items.size() == 3);
    const std::string key = on_one_line(page_text(pdf, 3)), asked = on_one_line(page_text(pdf, 1) + page_text(pdf, 2));
    CHECK(key.find("The key") != std::string::npos);
    CHECK(asked.find("The key") == std::string::npos);
    for (const char* question : {"How old is the wood in the ring?", "Which is the best cane", "How many count buds up to the ring?", "¿"}) CHECK_MESSAGE(asked.find(question) != std::string::npos, std::string(question));
    for (std::size_t i = 0; i < items.size(); ++i) {
        CAPTURE(i);
        CHECK(said["items"][i]["kind"] == std::string(word_of(items[i].kind)));
        REQUIRE(said["items"][i]["accepted"].size() == items[i].accepted.size());
        for (std::size_t a = 0; a < items[i].accepted.size(); ++a) CHECK(said["items"][i]["accepted"][a][0] == items[i].accepted[a][0]);
    }
    CHECK(asked.find("It is one year old: smooth") == std::string::npos);
    CHECK(asked.find("base buds below the first clear joint do not count") == std::string::npos);
    CHECK(key.find("base buds below the first clear joint do not count") != std::string::npos);
    REQUIRE(shed.run({"quiz", "make", "--items", "3", "--seed", "5", "--kinds", "wood-age,pick-one,count", "-o", again}).status == 0);
    CHECK(file_text(again) == file_text(pdf));
}

TEST_CASE("a quiz that cannot be made is refused in one sentence, and nothing is written") {
    const Shed shed;
    const std::string pdf = shed.folder.file("q.pdf");
    const std::vector<std::vector<std::string>> wrong{{"--items", "0", "--seed", "1"},  {"--items", "21", "--seed", "1"}, {"--items", "x", "--seed", "1"},
                                                      {"--items", "2", "--seed", "-1"}, {"--items", "2", "--seed", ""},   {"--items", "2", "--seed", "1", "--kinds", "juggling"},
                                                      {"--items", "2", "--seed", "1", "--kinds", "count,"}, {"--items", "2", "--seed", "1", "--rules", "nowhere"}};
    for (const auto& options : wrong) {
        CAPTURE(options.back());
        std::vector<std::string> words{"quiz", "make"};
        words.insert(words.end(), options.begin(), options.end());
        words.insert(words.end(), {"-o", pdf});
        shed.refused(words);
        CHECK(!std::filesystem::exists(pdf));
    }
    CHECK(shed.run({"quiz", "make", "--items", "2"}).err.find("--seed") != std::string::npos);
    CHECK(shed.run({"quiz"}).err.find("quiz make") != std::string::npos);
}

TEST_CASE("the audit sheets: one page of A4 each, headed by the block sheet, both languages, a line a vine, and how little they prove [wilson-1927]") {
    const Shed shed;
    const std::string sheet = SPURWRIGHT_SOURCE "/assets/block-sheets/example.json", pdf = shed.folder.file("audit ñ.pdf");
    const json said = shed.object({"audit", "sheet", sheet, "-o", pdf}, "verb-audit-sheet");
    CHECK(said["pages"] == 1);
    const std::string info = run_program_of("/usr/bin/pdfinfo", {pdf}).out;
    CHECK(info.find("(A4)") != std::string::npos);
    CHECK(info.find("Pages:           1\n") != std::string::npos);
    const std::string text = on_one_line(page_text(pdf, 1));
    for (const char* told : {"Audit in the row", "Revisión en la hilera", "pruner", "podador", "what is wrong", "The fault seen most", "18 of 20 right could be anything from 70 to 97 %"})
        CHECK_MESSAGE(text.find(told) != std::string::npos, std::string(told));
    CHECK(text.find(said["block"].get<std::string>()) != std::string::npos);
    CHECK(text.find(" 20 ") != std::string::npos);
    for (const auto& [option, told] : {std::pair{"--second", "9 shoots of 10 buds kept"}, std::pair{"--looking", "tape 6"}}) {
        shed.object({"audit", "sheet", sheet, option, "-o", pdf}, "verb-audit-sheet");
        CHECK(run_program_of("/usr/bin/pdfinfo", {pdf}).out.find("Pages:           1\n") != std::string::npos);
        CHECK(on_one_line(page_text(pdf, 1)).find(told) != std::string::npos);
    }
    shed.object({"audit", "sheet", sheet, "--vines", "24", "-o", pdf}, "verb-audit-sheet");
    CHECK(run_program_of("/usr/bin/pdfinfo", {pdf}).out.find("Pages:           1\n") != std::string::npos);
    const auto proves = learning::wilson(22, 24);
    CHECK(on_one_line(page_text(pdf, 1)).find("22 of 24 right could be anything from " + std::to_string(std::lround(100 * proves.low)) + " to " + std::to_string(std::lround(100 * proves.high))) != std::string::npos);
    shed.refused({"audit", "sheet", sheet, "--vines", "25", "-o", pdf});
    shed.refused({"audit", "sheet", sheet, "--second", "--looking", "-o", pdf});
    shed.refused({"audit", "sheet", shed.folder.file("none.json"), "-o", pdf});
}
