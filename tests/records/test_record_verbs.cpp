// records export, replay, check, backup, due, drop and crew sign, unsign, signed, consent, as a person runs them.
#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "scenarios/io/csv.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/backup.h"
#include "scenarios/records/sign_off.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "tests/cli/shed.h"
#include "tests/support/grown.h"

using namespace spurwright;
using nlohmann::json;
using test::Ran;
using test::Shed;

namespace {

std::string store_of(const Shed& shed) { return shed.folder.file("data/spurwright/store.sqlite"); }

records::FinishedVine finished(std::uint64_t seed, std::optional<std::int64_t> person, const std::string& house_name = "general") {
    growth::Site site;
    site.seed = seed;
    records::FinishedVine f;
    f.vine = test::grown(site);
    f.house_name = house_name;
    f.place = "own";
    f.mode = "window";
    f.view = "row";
    f.person = person;
    const planning::Planning planning(f.vine, f.house);
    f.plan = planning.top(3).back().plan;
    f.judgement = rules::judge(f.vine, *prune(f.vine, f.plan), f.house);
    f.best = planning.best()->points;
    f.tally = planning.count(f.judgement.points);
    return f;
}

void put_answers(const Shed& shed) {
    static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
    const auto words = words::load_words(assets, "en");
    auto store = records::Store::open(store_of(shed));
    REQUIRE(store.has_value());
    REQUIRE(records::keep_finished(*store, finished(41, 7), *words, "2026-01-31T12:00:00Z"));
    REQUIRE(records::keep_finished(*store, finished(42, std::nullopt, "=cmd"), *words, "2026-01-31T12:05:00Z"));
}

void put_crew(const Shed& shed) { shed.object({"crew", "import", shed.folder.write("crew.csv", "number,name,language\n3,Marta,es\n7,Ana,es\n8,,es\n")}, "verb-crew-import"); }

} // namespace

TEST_SUITE("records/verbs") {
    TEST_CASE("kept answers are written out, read back by another reader, judged again and found sound") {
        const Shed shed;
        put_answers(shed);
        const std::string csv = shed.folder.file("out ñ.csv"), file = shed.folder.file("out.json");
        const json said = shed.object({"records", "export", "-o", csv}, "verb-records-export");
        CHECK(said["written"] == 2);
        CHECK(said["rows"] == 2);
        const std::string text = test::file_text(csv);
        CHECK(text.find("\r\n") != std::string::npos);
        auto reader = io::CsvReader::of(text, csv);
        REQUIRE(reader.has_value());
        io::CsvRow row;
        int rows = 0;
        const auto cell = [&](std::string_view column) {
            for (std::size_t i = 0; i < reader->headings().size(); ++i)
                if (reader->headings()[i] == column) return row.cells[i];
            return std::string("no such column");
        };
        while (*reader->next(row)) {
            CHECK(!row.fault);
            CHECK(row.cells.size() == reader->headings().size());
            ++rows;
            const records::FinishedVine f = finished(40 + static_cast<std::uint64_t>(rows), {});
            CHECK(cell("plan") == print_plan(f.plan));
            CHECK(cell("marks") == io::Json(f.judgement.points).text);
            if (rows == 2) CHECK(cell("rule_set") == "'=cmd"); // a name that a table would take for a formula
        }
        CHECK(rows == 2);
        const json whole = (shed.object({"records", "export", "-o", file, "--with-vines"}, "verb-records-export"), json::parse(test::file_text(file)));
        CHECK(test::schema_fault("records-1", test::file_text(file)) == "");
        CHECK(whole["events"].size() == 2);
        CHECK(whole["vines"].size() == 2);
        CHECK(whole["rule_sets"].size() == 1);
        CHECK(shed.object({"records", "export", "-o", csv, "--person", "7"}, "verb-records-export")["left_out"] == 1);
        const json again = shed.object({"records", "replay"}, "verb-records-replay");
        CHECK(again["replayed"] == 2);
        CHECK(again["same"] == 2);
        CHECK(shed.object({"records", "replay", "--id", "2"}, "verb-records-replay")["replayed"] == 1);
        const json sound = shed.object({"records", "check"}, "verb-records-check");
        CHECK(sound["damaged"].empty());
        CHECK(sound["vines"] == 2);
        for (const char* language : {"en", "es", "es-CL"})
            for (const char* verb : {"replay", "check", "due"}) {
                const Ran text_ran = shed.run({"records", verb, "--language", language});
                CHECK(text_ran.status == 0);
                CHECK(text_ran.out.find('[') == std::string::npos);
            }
    }
    TEST_CASE("a record that comes out otherwise is told with both, exit 1; damage too; nothing is changed by either") {
        const Shed shed;
        put_answers(shed);
        {
            auto store = records::Store::open(store_of(shed));
            REQUIRE(store->run("UPDATE event SET body = json_set(body, '$.marks_tenths', json_extract(body, '$.marks_tenths') - 1) WHERE id = 1"));
        }
        const json again = shed.object({"records", "replay"}, "verb-records-replay", 1);
        CHECK(again["different"] == 1);
        CHECK(again["records"][0]["was"] != again["records"][0]["is"]);
        CHECK(shed.run({"records", "replay"}).out.find("differs: it was marks ") != std::string::npos);
        {
            auto store = records::Store::open(store_of(shed));
            REQUIRE(store->run("DELETE FROM kept_vine WHERE hash = (SELECT json_extract(body, '$.vine_hash') FROM event WHERE id = 2)"));
        }
        const json checked = shed.object({"records", "check"}, "verb-records-check", 1);
        REQUIRE(checked["damaged"].size() == 1);
        CHECK(checked["damaged"][0]["what"] == "A vine or rules that an event needs are missing.");
        CHECK(shed.object({"records", "replay"}, "verb-records-replay", 1)["unreadable"] == 1);
    }
    TEST_CASE("a copy is whole and opens as the store; what is there is never written over") {
        const Shed shed;
        CHECK(shed.refused({"records", "backup", "-o", shed.folder.file("c.sqlite")}).find("no records") != std::string::npos);
        put_answers(shed);
        const std::string copy = shed.folder.file("copia ñ.sqlite");
        CHECK(shed.object({"records", "backup", "-o", copy}, "verb-records-backup")["file"] == copy);
        auto opened = records::Store::open_to_read(copy);
        REQUIRE((opened && *opened));
        CHECK(*(*opened)->whole("SELECT count(*) FROM event") == 2);
        CHECK(shed.refused({"records", "backup", "-o", copy}).find("a file of that name") != std::string::npos);
        CHECK(shed.refused({"records", "backup", "-o", "/proc/nowhere/c"}).find("no such folder") != std::string::npos);
        CHECK(shed.folder.files() == 2); // the records and the copy
    }
    TEST_CASE("a named person signs off another, lists it, withdraws it; the program never does") {
        const Shed shed;
        put_crew(shed);
        const std::vector<std::string> sign{"crew", "sign", "7", "--skill", "bud-load", "--by", "3", "--saw", "row 4, vines 1 to 20", "--on", "2026-01-05"};
        const json signed_off = shed.object(sign, "verb-crew-sign");
        CHECK(signed_off["until"] == "2027-01-05");
        const json listed = shed.object({"crew", "signed"}, "verb-crew-signed");
        REQUIRE(listed["signed"].size() == 1);
        CHECK(listed["signed"][0]["saw"] == "row 4, vines 1 to 20");
        const std::string id = std::to_string(signed_off["id"].get<int>());
        shed.object({"crew", "unsign", id, "--by", "3", "--reason", "the wrong person"}, "verb-crew-unsign");
        CHECK(shed.object({"crew", "signed"}, "verb-crew-signed")["signed"].empty());
        CHECK(shed.refused({"crew", "unsign", id, "--by", "3", "--reason", "again"}).find("no sign-off") != std::string::npos);
        const auto refused = [&](const std::vector<std::string>& words) { return shed.refused(words); };
        CHECK(refused({"crew", "sign", "7", "--skill", "bud-load", "--by", "8", "--saw", "x"}).find("no name") != std::string::npos);
        CHECK(refused({"crew", "sign", "3", "--skill", "bud-load", "--by", "3", "--saw", "x"}).find("Nobody signs for themselves") != std::string::npos);
        CHECK(refused({"crew", "sign", "9", "--skill", "bud-load", "--by", "3", "--saw", "x"}).find("Nobody has the number 9") != std::string::npos);
        CHECK(refused({"crew", "sign", "7", "--skill", "juggling", "--by", "3", "--saw", "x"}).find("juggling") != std::string::npos);
        CHECK(refused({"crew", "sign", "7", "--skill", "bud-load", "--by", "3", "--saw", " "}).find("what was seen") != std::string::npos);
        CHECK(refused({"crew", "sign", "7", "--skill", "bud-load", "--by", "3", "--saw", "x", "--on", "2026-02-30"}).find("no day") != std::string::npos);
        CHECK(refused({"crew", "sign", "7", "--skill", "bud-load", "--by", "3", "--saw", "x", "--on", "2026-02-03", "--until", "2026-02-02"}).find("before it begins") != std::string::npos);
    }
    TEST_CASE("who signed is nobody any more once forgotten; the sign-off stays with whom it is of") {
        const Shed shed;
        put_crew(shed);
        shed.object({"crew", "sign", "7", "--skill", "bud-load", "--by", "3", "--saw", "row 4"}, "verb-crew-sign");
        shed.object({"crew", "forget", "3"}, "verb-crew-forget");
        const json listed = shed.object({"crew", "show", "7"}, "verb-crew-show");
        REQUIRE(listed["events"].size() == 1);
        CHECK(listed["events"][0]["body"]["by"].is_null());
        auto store = records::Store::open_to_read(store_of(shed));
        CHECK(records::sign_offs(**store)->size() == 1);
    }
    TEST_CASE("the notice is said in the person's language and the answer noted; the last one counts") {
        const Shed shed;
        put_crew(shed);
        CHECK(shed.object({"crew", "consent", "7"}, "verb-crew-consent")["answer"].is_null());
        CHECK(shed.object({"crew", "consent", "7", "--answer", "yes", "--language", "es"}, "verb-crew-consent")["language"] == "es");
        CHECK(shed.object({"crew", "consent", "7"}, "verb-crew-consent")["answer"] == true);
        shed.object({"crew", "consent", "7", "--answer", "no"}, "verb-crew-consent");
        CHECK(shed.object({"crew", "consent", "7"}, "verb-crew-consent")["answer"] == false);
        CHECK(shed.refused({"crew", "consent", "9", "--answer", "yes"}).find("Nobody has the number 9") != std::string::npos);
    }
    TEST_CASE("results of a person go a year after their season, only where they were listed 30 days before; nobody's results stay") {
        const Shed shed;
        put_answers(shed); // 31 January 2026: the season ends on 30 September 2026, its results are kept to a year later
        auto store = records::Store::open(store_of(shed));
        REQUIRE(store);
        const std::string then = "2027-12-01T08:00:00Z";
        CHECK(records::show_due(*store, {2027, 8, 30})->empty());
        CHECK(*records::drop_due(*store, {2027, 10, 5}, then) == 0); // its time is over, but nobody was told
        const auto due = records::show_due(*store, {2027, 9, 1});
        REQUIRE(due->size() == 1);
        CHECK(due->front().person == 7);
        CHECK(due->front().until == records::Day{2027, 9, 30});
        CHECK(*records::drop_due(*store, {2027, 9, 30}, then) == 0); // that day it still holds
        CHECK(*records::drop_due(*store, {2027, 10, 1}, then) == 1);
        CHECK(*store->whole("SELECT count(*) FROM event") == 1);
        CHECK(records::kept_until({0, "sign-off", 1, "2026-11-02T00:00:00Z", 7, "{}", {}}) == records::Day{2030, 9, 30});
        CHECK(records::kept_until({0, "answer", 1, "2026-07-02T00:00:00Z", 7, "{}", {}}) == records::Day{2027, 9, 30}); // the south's winter
    }
    TEST_CASE("words that are wrong are refused in one sentence") {
        const Shed shed;
        CHECK(shed.refused({"records", "export", "-o", "x.txt"}).find("x.txt") != std::string::npos);
        CHECK(shed.refused({"records", "export", "-o", shed.folder.file("x.csv")}).find("no records") != std::string::npos);
        CHECK(shed.refused({"records", "export", "-o", shed.folder.file("x.csv"), "--with-vines"}).find(".json") != std::string::npos);
        CHECK(!std::filesystem::exists(shed.folder.file("data")));
        put_answers(shed);
        CHECK(shed.refused({"records", "replay", "--id", "99"}).find("no answer or quiz with the number 99") != std::string::npos);
        CHECK(shed.refused({"records", "replay", "--id", "x"}).find("x") != std::string::npos);
    }
}

TEST_SUITE("records/crew view") {
    TEST_CASE("the crew by its quizzes: right of asked by rule, the last word where a quiz was recounted, words only from eight answers on two days") {
        const Shed shed;
        put_crew(shed);
        auto store = records::Store::open(store_of(shed));
        REQUIRE(store);
        const auto put = [&](std::int64_t person, const char* quiz, const char* when, int right, int of, std::optional<std::int64_t> corrects = {}) {
            const std::string share = R"("right":)" + std::to_string(right) + R"(,"of":)" + std::to_string(of);
            const auto id = records::add_event(*store, {0, "quiz-answers", 1, when, person, R"({"quiz":")" + std::string(quiz) + R"(","as":1,"language":"es",)" + share + R"(,"rules":[{)" + share + R"(,"rule":"bud-load"}]})", corrects});
            REQUIRE(id);
            return *id;
        };
        put(7, "a", "2026-01-05T07:00:00Z", 5, 5);
        put(7, "b", "2026-01-06T07:00:00Z", 5, 5);
        const auto first = put(8, "a", "2026-01-05T07:00:00Z", 5, 5);
        put(8, "a", "2026-01-05T07:30:00Z", 1, 5, first); // a dispute
        put(8, "b", "2026-01-06T07:00:00Z", 1, 5);
        put(12, "b", "2026-01-06T07:00:00Z", 3, 5); // not on the list
        const json view = shed.object({"crew", "view"}, "verb-crew-view");
        CHECK(view["quizzes"] == 2);
        CHECK(view["most_wrong"] == "bud-load");
        CHECK(view["rules"][0]["right"] == 15);
        CHECK(view["rules"][0]["of"] == 25);
        REQUIRE(view["members"].size() == 4); // 3, 7, 8 and 12, by number
        CHECK(view["members"][0]["rules"].empty());
        CHECK(view["members"][1]["rules"][0]["word"] == "alone");
        CHECK(view["members"][2]["rules"][0]["word"] == "needs-a-look");
        CHECK(view["members"][3]["rules"][0]["word"] == "with-help");
        CHECK(view["members"][3]["number"] == 12);
        for (const char* language : {"en", "es"}) {
            const Ran text = shed.run({"crew", "view", "--language", language});
            CHECK(text.status == 0);
            CHECK(text.out.find('[') == std::string::npos);
            CHECK(text.out.find("2/10") != std::string::npos);
        }
        CHECK(Shed().run({"crew", "view"}).status == 0);
    }
}
