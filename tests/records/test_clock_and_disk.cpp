// A clock that jumps, a disk that is full while a quiz goes on, a home with accents, blanks and a long name.
#include <doctest/doctest.h>

#include <signal.h>
#include <sys/resource.h>

#include <chrono>
#include <filesystem>
#include <thread>

#include "scenarios/io/safe_file.h"
#include "scenarios/practice/crew_quiz.h"
#include "scenarios/practice/look_drill.h"
#include "scenarios/records/act.h"
#include "scenarios/records/answer.h"
#include "scenarios/records/restore.h"
#include "scenarios/records/crew_view.h"
#include "scenarios/records/past_vines.h"
#include "scenarios/records/people.h"
#include "scenarios/records/sign_off.h"
#include "scenarios/settings/settings.h"
#include "scenarios/words/load_words.h"
#include "sim/pruning/plan_text.h"
#include "sim/rules/judge.h"
#include "tests/cli/shed.h"
#include "tests/support/little_vine.h"

using namespace spurwright;
using namespace spurwright::records;
using test::Shed;

namespace {

// The clock goes back a day, then a year, over 29 February and the hours of a change of zone, then on.
constexpr std::array<const char*, 6> jumping{"2028-02-29T12:00:00Z", "2028-02-28T12:00:00Z", "2027-03-28T01:30:00Z", "2028-03-01T00:00:00Z", "2026-10-25T02:30:00Z", "2028-03-02T12:00:00Z"};

// No file of this process grows over so many bytes while it lives.
class FullDisk {
public:
    explicit FullDisk(rlim_t most) : handler_(::signal(SIGXFSZ, SIG_IGN)) {
        REQUIRE(::getrlimit(RLIMIT_FSIZE, &before_) == 0);
        rlimit now = before_;
        now.rlim_cur = most;
        REQUIRE(::setrlimit(RLIMIT_FSIZE, &now) == 0);
    }
    ~FullDisk() {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        ::signal(SIGXFSZ, handler_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit before_{};
    sighandler_t handler_;
};

} // namespace

TEST_SUITE("records/clock") {
    TEST_CASE("answers stand in the order they were given, whatever the clock said of each") {
        static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
        const auto words = words::load_words(assets, "en");
        const test::Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        FinishedVine finished;
        finished.vine = test::little_vine();
        finished.place = "own";
        finished.person = 7;
        const std::array<const char*, 6> plans{"mark a4 left", "mark a5 left", "mark a6 right", "mark a7 right", "cut a7.0+5.0 shears", "cut a6.0+5.0 shears"};
        for (std::size_t i = 0; i < plans.size(); ++i) {
            finished.plan = *parse_plan(plans[i]);
            finished.judgement = rules::judge(finished.vine, *prune(finished.vine, finished.plan), finished.house);
            REQUIRE(keep_finished(*store, finished, *words, jumping[i]));
        }
        const auto past = past_vines(*store, 7);
        REQUIRE(past->size() == plans.size());
        for (std::size_t i = 0; i < plans.size(); ++i) CHECK((*past)[i].plan == print_plan(*parse_plan(plans[i])));
        // The last one again, by a window that went on after a crash: known, though its clock is not the latest.
        CHECK(!keep_finished(*store, finished, *words, jumping[4])->has_value());
    }
    TEST_CASE("of a quiz recounted, a yes and no, and a sign-off the last word counts, though its clock is the earlier") {
        const test::Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        for (const std::int64_t number : {3, 7}) REQUIRE(put_person(*store, {number, "Ana", "es", "", ""}));
        const auto told = [](int right) { return R"({"quiz":"a","as":1,"language":"es","right":)" + std::to_string(right) + R"(,"of":5,"rules":[]})"; };
        const auto first = add_event(*store, {0, "quiz-answers", 1, jumping[0], 7, told(5), std::nullopt});
        REQUIRE(add_event(*store, {0, "quiz-answers", 1, jumping[1], 7, told(1), *first}));
        const auto view = crew_view(*store, {2028, 3, 1});
        CHECK(view->members.back().all == quiz::Share{1, 5});
        REQUIRE(say_consent(*store, 7, true, "es", jumping[0]));
        REQUIRE(say_consent(*store, 7, false, "es", jumping[2]));
        CHECK(*consent_of(*store, 7) == std::optional(false));
        const auto signed_off = sign_off(*store, {0, 7, 3, "bud-load", "row 4", {2028, 2, 29}, {2029, 2, 28}}, jumping[0]);
        REQUIRE(signed_off);
        CHECK(sign_offs(*store)->size() == 1);
        REQUIRE(withdraw(*store, *signed_off, 3, "mistaken", jumping[4]));
        CHECK(sign_offs(*store)->empty());
    }
    TEST_CASE("looks are told in their order; a clock put back forgets no skill and masters none") {
        const test::Folder folder;
        const std::string path = folder.file("s.sqlite");
        {
            auto store = Store::open(path);
            for (std::size_t i = 0; i < jumping.size(); ++i)
                REQUIRE(add_event(*store, {0, "look", 1, jumping[i], 7, R"({"skill":"wood-age","right":)" + std::to_string(i % 3) + R"(,"said":)" + std::to_string(i % 3) + R"(,"ms":1000,"vine_hash":"0123456789abcdef"})", std::nullopt}));
        }
        practice::LookDrill drill(path, 7, "en", {}, [] { return std::int64_t{0}; }, 20'000);
        REQUIRE(drill.recall());
        REQUIRE(drill.answers().size() == jumping.size());
        for (std::size_t i = 0; i < jumping.size(); ++i) CHECK(drill.answers()[i].right == i % 3);
        const auto progress = drill::progress_of(drill.answers(), drill::Skill::wood_age, drill.answers().back().day - 400);
        CHECK(progress.mastery == drill::Mastery::with_help); // six answers: too few for either word
        CHECK(progress.days == 6);
        CHECK(drill::expected_right(drill.answers(), drill::Skill::wood_age) > 0.5);
    }
    TEST_CASE("a clock that was years ahead: today's copy is made and stays, and nothing is dropped before its time") {
        const test::Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(keep_rule_set(*store, "0123456789abcdef", {"general", 1, ""}));
        {
            const auto act = Act::begin(*store, "crew-import", jumping[0]);
            REQUIRE(put_person(*store, {7, "Ana", "es", "", ""}));
            REQUIRE((*act)->commit());
        }
        for (int day = 1; day <= 20; ++day) REQUIRE(back_up_daily(*store, {2038, 1, day}));
        REQUIRE(back_up_daily(*store, {2026, 11, 30}));
        const auto copies = backups_of(*store);
        REQUIRE(copies.size() == most_backups);
        CHECK(copies.front().ends_with("store-2026-11-30.sqlite"));
        REQUIRE(add_event(*store, {0, "answer", 1, "2026-01-31T12:00:00Z", 7, "{}", std::nullopt}));
        CHECK(show_due(*store, {2038, 1, 1})->size() == 1);            // shown by a clock far ahead
        CHECK(*drop_due(*store, {2026, 12, 1}, jumping[0]) == 0);      // now it is right again: nothing is over
        CHECK(*store->whole("SELECT count(*) FROM event") == 1);
    }
}

TEST_SUITE("records/full disk") {
    TEST_CASE("a quiz goes on while the disk is full, and all of it is kept once there is room again") {
        const test::Folder folder;
        const std::string path = folder.file("wall.journal");
        practice::CrewQuiz crew(path, std::nullopt);
        crew.setup.kinds = {quiz::Kind::wood_age};
        crew.setup.questions = practice::fewest_questions;
        crew.begin(5, "general", {}, "en");
        while (crew.stage() == practice::QuizStage::making) {
            crew.poll();
            std::this_thread::sleep_for(std::chrono::milliseconds(1));
        }
        REQUIRE(crew.take(quiz::event::Next{}));
        const auto kept = [&] { return io::read_entries(*io::read_file(path, io::largest_journal)).entries.size(); };
        REQUIRE(kept() == 2); // how it was gathered, and the first question
        int refused = 0;
        {
            const FullDisk full(io::read_file(path, io::largest_journal)->size() + 20); // half an answer more
            for (int person = 1; person <= 12; ++person) {
                const auto done = crew.take(quiz::event::Answered{{quiz::Way::person, person}, {1}});
                refused += !done;
                if (!done) CHECK(!done.error().key.name.empty());
            }
            CHECK(kept() == 2);
        }
        CHECK(refused == 12);
        CHECK(crew.quiz()->state().rounds[0].voters.size() == 12); // nothing is lost meanwhile
        REQUIRE(crew.take(quiz::event::Locked{}));
        CHECK(kept() == 15);
        practice::CrewQuiz again(path, std::nullopt);
        CHECK(again.offered());
    }
    TEST_CASE("settings and copies: the file from before stays whole, and nothing lies beside it") {
        const test::Folder folder;
        settings::Settings chosen;
        const std::string path = folder.file("settings.json");
        REQUIRE(settings::save_settings(path, chosen));
        const std::string before = test::file_text(path);
        auto store = Store::open(folder.file("s.sqlite"));
        REQUIRE(put_person(*store, {7, "Ana", "es", "", ""}));
        const std::size_t files = folder.files();
        {
            const FullDisk full(40);
            chosen.language = "es";
            const auto saved = settings::save_settings(path, chosen);
            REQUIRE(!saved);
            CHECK(saved.error().fault == Fault::cannot_write);
            const auto copied = write_copy(*store, folder.file("copy.sqlite"));
            REQUIRE(!copied);
            CHECK(copied.error().fault == Fault::cannot_write);
        }
        CHECK(test::file_text(path) == before);
        CHECK(folder.files() == files);
        REQUIRE(settings::save_settings(path, chosen));
        REQUIRE(write_copy(*store, folder.file("copy.sqlite")));
    }
}

TEST_SUITE("records/damaged body") {
    TEST_CASE("one body that is no JSON any more stops nothing else: it is named, the rest is kept, read and forgotten") {
        static const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
        const auto words = words::load_words(assets, "en");
        const test::Folder folder;
        auto store = Store::open(folder.file("s.sqlite"));
        for (const std::int64_t number : {3, 7}) REQUIRE(put_person(*store, {number, "Ana", "es", "", ""}));
        REQUIRE(sign_off(*store, {0, 7, 3, "bud-load", "row 4", {2028, 2, 29}, {2029, 2, 28}}, jumping[0]));
        REQUIRE(say_consent(*store, 7, true, "es", jumping[0]));
        REQUIRE(store->text("PRAGMA ignore_check_constraints=ON"));
        for (const char* kind : {"answer", "quiz", "quiz-answers", "look", "sign-off", "weighing"}) REQUIRE(add_event(*store, {0, kind, 1, jumping[0], 7, R"({"vine_hash": "01)", std::nullopt}));
        CHECK(*consent_of(*store, 7) == std::optional(true));
        CHECK(past_vines(*store, 7)->empty());
        CHECK(crew_view(*store, {2028, 3, 1})->members.size() == 2);
        CHECK(sign_offs(*store)->size() == 1);
        FinishedVine finished;
        finished.vine = test::little_vine();
        finished.person = 7;
        finished.plan = *parse_plan("mark a4 left");
        finished.judgement = rules::judge(finished.vine, *prune(finished.vine, finished.plan), finished.house);
        CHECK(keep_finished(*store, finished, *words, jumping[0])->has_value());
        CHECK(check_contents(*store)->damaged.size() == 6);
        CHECK(forget_person(*store, 3, false, jumping[0])); // who signed
        CHECK(sign_offs(*store)->front().by == 0);
        CHECK(forget_person(*store, 7, false, jumping[0]));
        CHECK(*store->whole("SELECT count(*) FROM event") == 0);
    }
}

TEST_SUITE("records/paths") {
    TEST_CASE("a home with accents, blanks, signs and a name of 200 characters: in, out, copied, back, forgotten") {
        const Shed shed;
        const std::string home = shed.folder.file("Año nuevo, poda #1 100% 'buena' " + std::string(168, 'n'));
        const auto run = [&](const std::vector<std::string>& words) {
            const test::Ran ran = test::run_program_of(SPURWRIGHT_PROGRAM, words, {"XDG_DATA_HOME=" + home, "XDG_CONFIG_HOME=" + home});
            CHECK_MESSAGE(ran.status == 0, ran.err);
            return ran.out;
        };
        run({"crew", "import", shed.folder.write("lista ñandú.csv", "number,name,language\n7,Íñigo Œuvre,es\n8,Zoë,en\n")});
        const std::string copy = shed.folder.file("copia año #2 50%.sqlite");
        run({"records", "backup", "-o", copy});
        run({"crew", "forget", "8"});
        run({"records", "restore", copy});
        const std::string people = run({"crew", "list"});
        CHECK(people.find("Íñigo Œuvre") != std::string::npos);
        CHECK(people.find("Zoë") != std::string::npos);
        run({"records", "check"});
        run({"crew", "export", "-o", shed.folder.file("salida ñ.csv")});
        CHECK(test::file_text(shed.folder.file("salida ñ.csv")).find("Íñigo Œuvre") != std::string::npos);
    }
}
