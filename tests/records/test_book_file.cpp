// Weighings read: every bad cell refused with its line, its column and its reason; nothing lost, nothing half.
#include <doctest/doctest.h>

#include "scenarios/reference_vines/book_export.h"
#include "scenarios/reference_vines/book_file.h"

using namespace spurwright;
using namespace spurwright::reference_vines;
using records::RowFate;

namespace {

Book small_book() {
    ReferenceVine vine{1, "12", "3", 5, std::nullopt, std::nullopt, {}};
    for (int i = 0; i < 7; ++i) vine.winters.push_back({2018 + i, from_g(900 + 20 * (i % 3)), "900 g", "", 2, 24, std::nullopt, "", ""});
    return {{{1, "north", from_mm(1800), std::nullopt, "", false}, {vine}}, {{2, "south", from_mm(1500), std::nullopt, "", false}, {}}};
}

constexpr records::Day kept_on{2026, 2, 1};
const std::string short_head = "block,tag,winter,weight_kg\n";

std::string book_told(std::string_view text) {
    const auto file = read_book_file(text, "b.csv", small_book(), kept_on);
    if (!file) return "whole " + std::to_string(file.error().where.line) + " " + std::string(file.error().key.name);
    std::string told;
    for (const BookRow& row : file->rows)
        told += std::to_string(row.line) + (row.fate == RowFate::added ? "+" : row.fate == RowFate::changed ? "~" : "=") + std::to_string(row.weighing.prunings.count / 1000) + " ";
    for (const auto& row : file->refused) told += std::to_string(row.line) + "!" + row.column + ":" + std::string(row.reason.name) + " ";
    return told;
}
std::string one_row(const std::string& cells) { return book_told(short_head + cells + "\nsouth,1,2025,1\n"); }

} // namespace

TEST_SUITE("records/book-file") {
    TEST_CASE("a good row is new, changed or the same; units by heading or by cell; what a file lacks it does not change") {
        CHECK(book_told(short_head + "north,12,2024,0.9\n") == "2=900 ");
        CHECK(book_told(short_head + "north,12,2024,0.95\n") == "2~950 ");
        CHECK(book_told(short_head + "north,13,2024,0.9\n") == "2+900 ");
        CHECK(book_told("block,tag,winter,weight_lb\nsouth,1,2024,1.5\n") == "2+680 ");
        CHECK(book_told("block,tag,winter,weight_g\nsouth,1,2024,680\n") == "2+680 ");
        CHECK(book_told("block,tag,winter,weight\nsouth,1,2024,1.5 lb\nsouth,2,2024,2lb\n") == "2+680 3+907 ");
        CHECK(book_told("cuadro;marca;invierno;peso_kg\nnorth;12;2024;0.9\n") == "2=900 ");
        const auto file = read_book_file("block,tag,winter,weight\nsouth,1,2024,1.5 lb\n", "b.csv", small_book(), kept_on);
        CHECK(file->rows[0].weighing.typed == "1.5 lb"); // as typed, beside what it is
    }
    TEST_CASE("weights: negative, nothing, absurd, missing, comma, no number, formula, other units") {
        const std::string good = "3+1000 ";
        CHECK(one_row("north,1,2025,-0.5") == good + "2!weight_kg:error.value.negative ");
        CHECK(one_row("north,1,2025,0") == good + "2!weight_kg:error.book.zero ");
        CHECK(one_row("north,1,2025,0.0099") == good + "2!weight_kg:error.book.light ");
        CHECK(one_row("north,1,2025,0.01") == "2+10 " + good);
        CHECK(one_row("north,1,2025,20") == "2+20000 " + good);
        CHECK(one_row("north,1,2025,20.1") == good + "2!weight_kg:error.book.heavy ");
        CHECK(one_row("north,1,2025,900") == good + "2!weight_kg:error.book.heavy ");
        CHECK(one_row("north,1,2025,") == good + "2!weight_kg:error.import.missing ");
        CHECK(one_row("north,1,2025,\"0,85\"") == good + "2!weight_kg:error.value.comma ");
        CHECK(one_row("north,1,2025,0,85") == good + "2!:error.import.cells ");
        CHECK(one_row("north,1,2025,heavy") == good + "2!weight_kg:error.import.number ");
        CHECK(one_row("north,1,2025,=1+1") == good + "2!weight_kg:error.import.formula ");
        CHECK(one_row("north,1,2025,nan") == good + "2!weight_kg:error.import.number ");
        CHECK(one_row("north,1,2025,1e999") == good + "2!weight_kg:error.value.huge ");
        CHECK(one_row("north,1,2025,0.9 kg") == "2+900 " + good);
        CHECK(one_row("north,1,2025,2 lb") == good + "2!weight_kg:error.book.mixed-units ");
        CHECK(one_row("north,1,2025,2 stone") == good + "2!weight_kg:error.value.mass ");
        CHECK(book_told("block,tag,winter,weight\nsouth,1,2025,0.9 kg\nsouth,2,2025,2 lb\nsouth,3,2025,1\n") == "2+900 3!weight:error.book.mixed-units 4!weight:error.value.no-mass-unit ");
        CHECK(book_told("block,tag,winter,weight\nsouth,1,2025,0.9\n") == "2!weight:error.value.no-mass-unit ");
    }
    TEST_CASE("blocks, tags, winters, days and places") {
        const std::string good = "3+1000 ";
        CHECK(one_row("nort,1,2025,1") == good + "2!block:error.book.block-near ");
        CHECK(one_row("elsewhere,1,2025,1") == good + "2!block:error.book.block ");
        CHECK(one_row(",1,2025,1") == good + "2!block:error.import.missing ");
        CHECK(one_row("north,,2025,1") == good + "2!tag:error.import.missing ");
        CHECK(one_row("north,@1,2025,1") == good + "2!tag:error.import.formula ");
        CHECK(one_row("north,'@1,2025,1") == "2+1000 " + good);
        CHECK(one_row("north,a\xE9,2025,1") == good + "2!tag:error.import.not-utf8 ");
        CHECK(one_row("north,1,2027,1") == good + "2!winter:error.value.range "); // has not begun
        CHECK(one_row("north,1,1949,1") == good + "2!winter:error.value.range ");
        CHECK(one_row("north,1,,1") == good + "2!winter:error.import.missing ");
        CHECK(one_row("south,1,2025,2") == "2+2000 3!tag:error.book.twice ");
        const std::string head = "block,row,tag,place,winter,date,weight_kg\n";
        CHECK(book_told(head + "north,3,12,5,2026,2026-02-02,1\n") == "2!date:error.book.future ");
        CHECK(book_told(head + "north,3,12,5,2026,2026-02-01,1\n") == "2+1000 ");
        CHECK(book_told(head + "north,3,12,5,2026,2025-10-01,1\n") == "2+1000 ");
        CHECK(book_told(head + "north,3,12,5,2026,2025-09-30,1\n") == "2!date:error.book.other-winter ");
        CHECK(book_told(head + "north,3,12,5,2025,01/31/2025,1\n") == "2!date:error.import.day ");
        CHECK(book_told(head + "north,4,12,5,2026,,1\n") == "2!row:error.book.other-place ");
        CHECK(book_told(head + "north,3,12,6,2026,,1\n") == "2!place:error.book.other-place ");
        CHECK(book_told(head + "south,1,1,5,2025,,1\nsouth,1,1,6,2026,,1\nsouth,,1,,2024,,1\n") == "2+1000 4+1000 3!tag:error.book.tag-twice ");
        CHECK(book_told("block,tag,winter,weight_kg,latitude,longitude\nsouth,1,2025,1,42.1,\nsouth,2,2025,1,91,0\n") ==
              "2!longitude:error.import.missing 3!latitude:error.import.range ");
        CHECK(book_told("block,tag,winter\nsouth,1,2025\n") == "whole 1 error.import.column-missing");
        CHECK(book_told("block,tag,winter,weight_kg,weight_lb\nsouth,1,2025,1,2\n") == "whole 1 error.csv.heading-twice");
    }
    TEST_CASE("refused rows name both lines and keep what stood there") {
        const auto file = read_book_file(short_head + "south,1,2025,1\nsouth,1,2025,2\n", "b.csv", small_book(), kept_on);
        REQUIRE(file->refused.size() == 1);
        CHECK(file->refused[0].raw == "south,1,2025,2");
        CHECK(file->refused[0].arguments.back().value == Argument(std::string("2")));
    }
    TEST_CASE("a weight that stands apart is taken and asked about: from its own winters, else from its block") {
        const auto own = read_book_file(short_head + "north,12,2026,3.1\n", "b.csv", small_book(), kept_on);
        REQUIRE(own->odd.size() == 1);
        CHECK(own->odd[0].of_vine);
        CHECK(own->odd[0].usual == from_g(920));
        CHECK(own->counts.added == 1);
        std::string many = short_head;
        for (int i = 0; i < 9; ++i) many += "south," + std::to_string(i) + ",2025," + std::to_string(0.8 + 0.02 * i) + "\n";
        CHECK(read_book_file(many, "b.csv", small_book(), kept_on)->odd.empty());
        const auto block = read_book_file(many + "south,20,2025,8.4\n", "b.csv", small_book(), kept_on); // a point that slipped
        REQUIRE(block->odd.size() == 1);
        CHECK(block->odd[0].line == 11);
        CHECK(!block->odd[0].of_vine);
    }
    TEST_CASE("a hundred thousand rows, every thousandth bad") {
        std::string text = short_head;
        for (int i = 0; i < 100'000; ++i)
            text += "south," + std::to_string(i % 10'000) + "," + std::to_string(2010 + i / 10'000) + (i % 1000 == 999 ? ",-1\n" : ",1.25\n");
        const auto file = read_book_file(text, "b.csv", small_book(), kept_on);
        REQUIRE(file);
        CHECK(file->refused.size() == 100);
        CHECK(file->counts.added == 99'900);
        CHECK(file->vines.size() == 9'990);
    }
    TEST_CASE("the book written out is read back the same, to the milligram") {
        Book book = small_book();
        book[0].vines[0].latitude_e7 = -421'234'567;
        book[0].vines[0].longitude_e7 = 85'000'001;
        book[0].vines[0].winters[0].prunings = Mass{680'389};
        book[0].vines[0].winters[0].crop = Mass{4'100'000};
        book[0].vines[0].winters[0].note = "=dry, \"and\" cold";
        const Exported out = book_csv(book);
        CHECK(out.written == 7);
        const auto file = read_book_file(out.text, "b.csv", book, kept_on);
        REQUIRE(file);
        CHECK(file->refused.empty());
        CHECK(file->counts.same == 7);
        CHECK(out.text.find("-42.1234567,8.5000001") != std::string::npos);
        CHECK(out.text.find("\"'=dry, \"\"and\"\" cold\"") != std::string::npos);
    }
}
