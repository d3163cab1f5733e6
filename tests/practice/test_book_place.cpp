// Where a vine of the book stands, what was changed of it, and papers asked for where no program makes them.
#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/session.h"
#include "scenarios/words/load_words.h"
#include "tests/practice/book_wait.h"
#include "tests/support/folder.h"

using namespace spurwright;
using namespace spurwright::practice;
using reference_vines::VineChangeKind;

namespace {

const io::Assets place_assets(std::string(SPURWRIGHT_SOURCE) + "/assets");

struct PlaceShed {
    test::Folder here;
    settings::Folders folders{here.file("config/settings.json"), here.file("data/work"), here.file("config/house-rules.json"), here.file("data/records.sqlite")};
    std::unique_ptr<Session> session;
    PlaceShed() {
        std::uint64_t next = 5;
        auto made = Session::make(place_assets, folders, {}, [next]() mutable { return next++; });
        REQUIRE(made.has_value());
        session = *std::move(made);
        session->carry_out(ask::SafetySeen{});
        session->carry_out(ask::Book{});
        does(desk::NewBlock{"north", "1.8 m"});
        const std::string path = here.file("north.csv");
        REQUIRE(io::write_file(path, "block,row,tag,place,winter,weight_kg\nnorth,1,a,1,2025,0.7\nnorth,1,a,1,2026,0.8\nnorth,1,b,2,2026,0.9\n").has_value());
        does(desk::ReadIn{path});
        does(desk::ReadIn{path});
        does(desk::Open{"north"});
        does(desk::Tag{"a"});
        REQUIRE(book().vine()->tag == "a");
    }
    const BookDesk& book() const { return *session->book(); }
    void does(BookAct act) {
        session->carry_out(ask::BookDo{std::move(act)});
        test::wait_for_file(*session);
    }
    std::string said() const { return session->shell().message ? session->words().sentence(session->shell().message->key, session->shell().message->arguments) : std::string(); }
    std::optional<std::pair<std::int64_t, std::int64_t>> point() const {
        if (!book().vine() || !book().vine()->latitude_e7) return std::nullopt;
        return std::pair(*book().vine()->latitude_e7, *book().vine()->longitude_e7);
    }
};

}  // namespace

TEST_CASE("a place is typed, kept as an act of its own, told in the history and taken back; another row is another turn in the walk") {
    PlaceShed shed;
    shed.does(desk::Placed{"2", "14", "44.1234567", "-1.25"});
    CHECK(shed.said() == "");
    CHECK(shed.book().at() == 1);  // row 2 is walked after row 1
    CHECK(shed.book().vine()->tag == "a");
    CHECK(shed.book().vine()->row == "2");
    CHECK(shed.book().vine()->place == 14);
    CHECK(shed.point() == std::pair<std::int64_t, std::int64_t>(441'234'567, -12'500'000));
    const auto& history = shed.book().history();
    REQUIRE(history.size() == 4);
    CHECK(history[0].kind == VineChangeKind::moved);
    CHECK(history[1].kind == VineChangeKind::weighed);
    CHECK(history[1].winter == 2026);
    CHECK(history[1].after == from_g(800));
    CHECK(history[3].kind == VineChangeKind::named);
    shed.does(desk::Placed{"2", "14", "44.1234567", "-1.25"});  // as it stands
    CHECK(shed.book().history().size() == 4);
    REQUIRE(shed.book().can_take_back());
    CHECK(shed.book().last_act() == "book-vine");
    shed.does(desk::TakeBack{});
    shed.does(desk::Tag{"a"});
    CHECK(shed.book().vine()->row == "1");
    CHECK_FALSE(shed.point().has_value());
    REQUIRE(shed.book().history().size() == 5);
    CHECK(shed.book().history()[0].undoes);
    // A weight written over another tells both.
    shed.does(desk::Winter{-1});
    shed.does(desk::Tag{"a"});
    shed.does(desk::Enter{"0.85 kg", {}, {}, {}, {}});
    shed.does(desk::Tag{"a"});
    CHECK(shed.book().history()[0].kind == VineChangeKind::reweighed);
    CHECK(shed.book().history()[0].before == from_g(800));
    CHECK(shed.book().history()[0].after == from_g(850));
    for (const std::string language : {"en", "es", "es-ES", "es-CL"}) {
        const auto words = words::load_words(place_assets, language);
        REQUIRE(words.has_value());
        for (const std::string_view kind : words_of(VineChangeKind{})) CHECK(words->has("history.vine." + std::string(kind)));
    }
}

TEST_CASE("a place that cannot be is refused with its column and a sentence, and the vine stays where it stood") {
    PlaceShed shed;
    for (const desk::Placed& wrong : {desk::Placed{"1", "0", "", ""}, desk::Placed{"1", "first", "", ""}, desk::Placed{"1", "1", "91", "0"}, desk::Placed{"1", "1", "44,1", "0"}, desk::Placed{"1", "1", "44.1", ""},
                                      desk::Placed{"1", "1", "", "5"}, desk::Placed{"=1+1", "1", "", ""}, desk::Placed{"1", "1", "nan", "0"}, desk::Placed{"\xff", "1", "", ""}, desk::Placed{"1", "1", "44 N", "0"}}) {
        CAPTURE(wrong.row);
        CAPTURE(wrong.place);
        CAPTURE(wrong.latitude);
        shed.does(wrong);
        CHECK_FALSE(shed.said().empty());
        CHECK(shed.said().find('[') == std::string::npos);
        CHECK(shed.book().vine()->row == "1");
        CHECK(shed.book().vine()->place == 1);
        CHECK_FALSE(shed.point().has_value());
    }
    CHECK(shed.book().history().size() == 3);
}

TEST_CASE("a point is put and nudged on the map: half a metre is half a metre, at any latitude; the first has to be typed") {
    PlaceShed shed;
    shed.does(desk::Nudge{0.5, 0});
    CHECK_FALSE(shed.said().empty());
    CHECK_FALSE(shed.point().has_value());
    for (const std::int64_t latitude : {0, 440'000'000, -620'000'000}) {
        CAPTURE(latitude);
        shed.does(desk::Tag{"a"});
        shed.does(desk::PutAt{latitude, 100'000'000});
        const reference_vines::MapPoint from{shed.point()->first, shed.point()->second};
        shed.does(desk::Nudge{0.5, -0.5});
        const auto by = reference_vines::apart(from, {shed.point()->first, shed.point()->second});
        CHECK(std::abs(by.north_m - 0.5) < 0.006);  // a ten-millionth of a degree is 11 mm
        CHECK(std::abs(by.east_m + 0.5) < 0.006);
        // By the sphere of 6,371 km: what the plane leaves out is no millimetre over a metre.
        const double rad = 3.14159265358979 / 180, metre = 6'371'000 * rad;
        CHECK(std::abs(static_cast<double>(shed.point()->first - from.latitude_e7) / 1e7 * metre - by.north_m) < 0.002);
        // One that has no point yet begins in the middle of the others.
        shed.does(desk::Tag{"b"});
        if (!shed.point()) {
            shed.does(desk::Nudge{0, 2});
            REQUIRE(shed.point().has_value());
            shed.does(desk::TakeBack{});
        }
    }
}

TEST_CASE("where the program of papers is not beside this one it is said, and nothing is written") {
    PlaceShed shed;
    const std::string path = shed.here.file("sheet");
    shed.session->carry_out(ask::BookPaper{ask::PaperKind::sheet, path});
    CHECK(shed.session->makes_paper());
    for (int i = 0; i < 2'000 && shed.session->makes_paper(); ++i) {
        shed.session->poll();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    CHECK_FALSE(shed.session->makes_paper());
    CHECK_FALSE(shed.said().empty());
    CHECK_FALSE(io::read_file(path + ".pdf", 100).has_value());
    CHECK(paper_path("/there/x.pdf", "north", ".pdf") == "/there/x.pdf");
    CHECK(paper_path("/there/x", "north", ".png") == "/there/x.png");
    CHECK(paper_path("", "a b/c", ".pdf").ends_with("/a-b-c.pdf"));
}

TEST_CASE("a file in the window: every row that cannot be is told by line, column and reason before anything is written, and the good rows alone go in") {
    PlaceShed shed;
    const int newest = shed.book().newest_winter();
    struct Bad {
        std::string row, column;
    };
    const std::vector<Bad> bad{{"north,1,c,3,2026,,-0.5,20", "weight_kg"}, {"north,1,c,3,2026,,0,20", "weight_kg"},      {"north,1,c,3,2026,,75,20", "weight_kg"},    {"north,1,c,3,2026,,nan,20", "weight_kg"},
                               {"north,1,c,3,2026,,,20", "weight_kg"},     {"north,1,c,3,2026,,\"0,75\",20", "weight_kg"}, {"north,1,c,3,2026,,1.5 lb,20", "weight_kg"}, {"nroth,1,c,3,2026,,0.7,20", "block"},
                               {"north,1,c,3," + std::to_string(newest + 1) + ",,0.7,20", "winter"},                     {"north,1,c,3," + std::to_string(newest) + "," + std::to_string(newest + 1) + "-01-01,0.7,20", "date"},
                               {"north,1,c\xff,3,2026,,0.7,20", "tag"},    {"north,1,=cmd,3,2026,,0.7,20", "tag"},       {"north,1,c,3,2026,,=1+1,20", "weight_kg"},  {"north,2,a,9,2024,,0.7,20", "row"}};
    std::string csv = "block,row,tag,place,winter,date,weight_kg,buds\n";
    for (const Bad& one : bad) csv += one.row + "\n";
    csv += "north,1,d,4,2026,,0.7,20\nnorth,1,d,4,2026,,0.8,20\n";  // the second names the same vine and winter
    const std::string path = shed.here.file("bad.csv");
    REQUIRE(io::write_file(path, csv).has_value());
    shed.does(desk::ReadIn{path});
    REQUIRE(shed.book().preview().has_value());
    const FilePreview& preview = *shed.book().preview();
    CHECK(preview.counts.added == 1);
    REQUIRE(preview.refused.size() == bad.size() + 1);
    for (std::size_t i = 0; i < bad.size(); ++i) {
        const records::RefusedRow& row = preview.refused[i];
        CAPTURE(bad[i].row);
        CHECK(row.line == static_cast<int>(i) + 2);
        CHECK(row.column == bad[i].column);
        const std::string sentence = shed.session->words().sentence(row.reason, row.arguments);
        CHECK_FALSE(sentence.empty());
        CHECK(sentence.find('[') == std::string::npos);
    }
    CHECK(preview.refused.back().line == static_cast<int>(bad.size()) + 3);
    CHECK(shed.book().open()->vines.size() == 2);  // nothing yet
    shed.does(desk::ReadIn{path});
    CHECK(shed.book().open()->vines.size() == 3);
    // Whole files that cannot be: said, and the book as it was.
    for (const char* text : {"", "block,tag,winter,weight_kg,sugar\nnorth,a,2026,0.7,20\n", "block,tag,winter\nnorth,a,2026\n", "\xff\xfe\x00"}) {
        REQUIRE(io::write_file(path, text).has_value());
        shed.does(desk::ReadIn{path});
        CHECK_FALSE(shed.said().empty());
        CHECK_FALSE(shed.book().preview().has_value());
        CHECK(shed.book().open()->vines.size() == 3);
    }
    shed.does(desk::ReadIn{shed.here.file("not-there.csv")});
    CHECK_FALSE(shed.said().empty());
}
