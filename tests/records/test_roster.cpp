// A roster read: new, changed, same and refused rows, each refusal with its line, its column and its reason.
#include <doctest/doctest.h>

#include "scenarios/records/roster.h"

using namespace spurwright;
using namespace spurwright::records;

namespace {

const std::vector<std::string_view> spoken{"en", "es", "es-ES", "es-CL"};

std::string roster_told(std::string_view text, const std::vector<Person>& people = {}) {
    const auto roster = read_roster(text, "r.csv", people, spoken);
    if (!roster) return "whole " + std::to_string(roster.error().where.line) + " " + std::string(roster.error().key.name);
    std::string told;
    for (const RosterRow& row : roster->rows)
        told += std::to_string(row.line) + (row.fate == RowFate::added ? "+" : row.fate == RowFate::changed ? "~" : "=") + std::to_string(row.person.number) + " ";
    for (const RefusedRow& row : roster->refused) told += std::to_string(row.line) + "!" + row.column + ":" + std::string(row.reason.name) + " ";
    return told;
}

} // namespace

TEST_SUITE("records/roster") {
    TEST_CASE("good rows are taken, in any order of columns, with Spanish headings, and compared with who is there") {
        CHECK(roster_told("number,name,language,crew,start\n7,Ana,es,north,2026-01-05\n0008,,en,,\n") == "2+7 3+8 ");
        CHECK(roster_told("idioma;número;nombre\nes;7;Ana\n") == "2+7 ");
        const std::vector<Person> people{{7, "Ana", "es", "north", "2026-01-05"}};
        CHECK(roster_told("number,name,language,crew,start\n7,Ana,es,north,2026-01-05\n", people) == "2=7 ");
        CHECK(roster_told("number,name,language,crew,start\n7,Ana,es,south,2026-01-05\n", people) == "2~7 ");
        CHECK(roster_told("number,language\n7,es\n", people) == "2=7 "); // what a file lacks it does not change
        CHECK(roster_told("number,language\n7,en\n", people) == "2~7 ");
    }
    TEST_CASE("every refusal names line, column and reason; the rows beside it go in") {
        const std::string head = "number,name,language,crew,start\n";
        CHECK(roster_told(head + "x,Ana,es,,\n8,Eva,es,,\n") == "3+8 2!number:error.value.whole ");
        CHECK(roster_told(head + ",Ana,es,,\n") == "2!number:error.import.missing ");
        for (const char* number : {"0", "-3", "1000000000", "99999999999999999999"}) {
            CAPTURE(number);
            CHECK(roster_told(head + number + ",Ana,es,,\n") == "2!number:error.value.range ");
        }
        CHECK(roster_told(head + "1.5,Ana,es,,\n") == "2!number:error.value.whole ");
        CHECK(roster_told(head + "7,Ana,sp,,\n") == "2!language:error.crew.language-near ");
        CHECK(roster_told(head + "7,Ana,klingonish,,\n") == "2!language:error.crew.language ");
        CHECK(roster_told(head + "7,Ana,,,\n") == "2!language:error.import.missing ");
        CHECK(roster_told(head + "7,Ana,es,,31/01/2026\n") == "2!start:error.import.day ");
        CHECK(roster_told(head + "7,Ana,es,,2026-02-29\n") == "2!start:error.import.day ");
        CHECK(roster_told(head + "7,=HYPERLINK(1),es,,\n") == "2!name:error.import.formula ");
        CHECK(roster_told(head + "7,An\xF1" "a,es,,\n") == "2!name:error.import.not-utf8 ");
        CHECK(roster_told(head + "7,\"An\na\",es,,\n8,Eva,es,,\n") == "4+8 2!name:error.import.control ");
        CHECK(roster_told(head + "7," + std::string(201, 'a') + ",es,,\n") == "2!name:error.import.long ");
        CHECK(roster_told(head + "7,Ana,es\n") == "2!:error.import.cells ");
        CHECK(roster_told(head + "7,Ana,es,,\n8,Eva,es,,\n007,Ida,es,,\n") == "2+7 3+8 4!number:error.crew.number-twice ");
        const auto twice = read_roster(head + "7,Ana,es,,\n7,Eva,es,,\n", "r.csv", {}, spoken);
        CHECK(twice->refused[0].arguments[1].value == Argument(std::string("2"))); // both lines are named
        CHECK(twice->refused[0].raw == "7,Eva,es,,");
    }
    TEST_CASE("what is no roster is refused whole") {
        CHECK(roster_told("name,language\nAna,es\n") == "whole 1 error.import.column-missing");
        CHECK(roster_told("number,language,boots\n7,es,42\n") == "whole 1 error.import.unknown-column");
        CHECK(roster_told("number,language\n\"7,es\n") == "whole 2 error.csv.open-quote");
        std::string many = "number,language\n";
        for (int i = 1; i <= 10'001; ++i) many += std::to_string(i) + ",es\n";
        CHECK(roster_told(many) == "whole 10002 error.import.many");
    }
    TEST_CASE("what the program writes it reads back the same, formulas guarded") {
        const std::vector<Person> people{{7, "=1+1", "es", "\"north\", by the road", "2026-01-05"}, {12, "Ñandú, O'Brien", "es-CL", "-south", ""}};
        const std::string text = roster_csv(people);
        CHECK(text.find("\r\n7,'=1+1,es,\"\"\"north\"\", by the road\",2026-01-05\r\n") != std::string::npos);
        CHECK(roster_told(text, people) == "2=7 3=12 ");
        CHECK(roster_told(text) == "2+7 3+12 ");
    }
}
